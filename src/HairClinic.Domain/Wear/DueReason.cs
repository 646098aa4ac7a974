using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>One step of how a due date came about, as data that a screen puts into words.</summary>
/// <param name="Rule">Which rule acted; its documentation says what the other values mean for it.</param>
/// <param name="From">The date the rule started from.</param>
/// <param name="To">The date it led to.</param>
/// <param name="Amount">The weeks, days or hours the rule speaks of, where it does.</param>
/// <param name="UpTo">The upper end where the rule speaks of a range.</param>
public readonly record struct DueReason(DueRuleName Rule, LocalDate From, LocalDate To, int? Amount = null, int? UpTo = null);
