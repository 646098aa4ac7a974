namespace HairClinic.Domain.Replacement;

/// <summary>What else must be said with a client's next order, because it is why the day has moved.</summary>
/// <param name="WearsFast">A unit in house looks more worn than its age says (<see cref="Wear.Grades.FastWearRule"/>): look at the spare.</param>
/// <param name="WeakerSince">Units of theirs are among those that an alarm of the watch named: the first day of its deliveries.</param>
/// <param name="ForgottenSince">An order of theirs is waited for so long that it may be forgotten, and is not counted on: the day it went out.</param>
public readonly record struct ReorderWarnings(bool WearsFast, LocalDate? WeakerSince, LocalDate? ForgottenSince);
