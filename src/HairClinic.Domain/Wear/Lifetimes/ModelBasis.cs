namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What predictions stand on while the newest recalculation found no answer: an earlier one, or what the practice's rows assume.</summary>
/// <param name="RecordsUpTo">The last day whose records are in the fit that is used; null where there is none, and the rows alone speak.</param>
/// <param name="Reason">Why the newest found none.</param>
public sealed record ModelBasis(LifetimeKind Quantity, LocalDate? RecordsUpTo, LifetimeFitNote Reason)
{
    /// <param name="used">The fit predictions read; null where they read none.</param>
    /// <param name="unanswered">The last of those that found no answer; null where every one found some.</param>
    /// <returns>Null where there is nothing to say: what is used is newer, or nothing was ever calculated.</returns>
    public static ModelBasis? Of(StoredFit? used, StoredFit? unanswered) =>
        unanswered is { Notes: [var reason, ..] } && !(used?.FittedAt >= unanswered.FittedAt)
            ? new(unanswered.Quantity, used?.DataCut, reason)
            : null;
}
