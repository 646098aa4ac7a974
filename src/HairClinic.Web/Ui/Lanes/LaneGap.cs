namespace HairClinic.Web.Ui.Lanes;

/// <summary>Free time on a chair, in minutes from the salon's midnight.</summary>
public sealed record LaneGap(Guid ChairId, int StartMinute, int EndMinute);
