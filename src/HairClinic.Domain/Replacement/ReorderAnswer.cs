namespace HairClinic.Domain.Replacement;

/// <summary>When the next unit must be ordered, and what it means to order now.</summary>
/// <param name="GapIfOrderedToday">The chance that all hair in house and in flight is worn out before a unit ordered today is ready.</param>
/// <param name="ReorderInDays">The most whole days the order can wait; null where today is too late already.</param>
/// <param name="ExpectedDaysWithoutHair">Within the horizon, if ordered today.</param>
/// <param name="IsPastSight">The order can wait at least so long: farther was not looked.</param>
public readonly record struct ReorderAnswer(double GapIfOrderedToday, int? ReorderInDays, double ExpectedDaysWithoutHair, bool IsPastSight);
