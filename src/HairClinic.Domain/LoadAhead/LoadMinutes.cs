namespace HairClinic.Domain.LoadAhead;

/// <summary>What each kind of visit takes, by the practice's services.</summary>
public readonly record struct LoadMinutes(VisitMinutes Rebond, VisitMinutes Wash, VisitMinutes Fitting);
