namespace HairClinic.Web.Ui.Lanes;

/// <summary>A spell inside a visit: hands are on, or a coat is drying and hands are free.</summary>
public sealed record LaneSegment(bool HandsOn, int StartMinute, int EndMinute);
