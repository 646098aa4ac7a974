namespace HairClinic.Domain.Replacement;

/// <summary>An ordered unit that is not here yet: a new life, once it is ready.</summary>
/// <param name="Life">As if in house and never worn.</param>
/// <param name="Lead">What is left of its order, in working days of its workshop.</param>
/// <param name="Workshop">The days on which that workshop works.</param>
public readonly record struct UnitOnOrder(RemainingLife Life, LeadTimeTable Lead, WorkshopWorkingDays Workshop);
