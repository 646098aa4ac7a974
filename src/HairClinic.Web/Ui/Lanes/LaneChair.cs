namespace HairClinic.Web.Ui.Lanes;

/// <summary>A chair: one lane of the day.</summary>
public sealed record LaneChair(Guid Id, string Name);
