namespace HairClinic.Web.Ui.Lanes;

/// <summary>A stretch of a lane: a visit, a gap that can be filled, or time that is past or too short.</summary>
public sealed record LaneCell(int Columns, LaneBlock? Block = null, LaneGap? Gap = null);
