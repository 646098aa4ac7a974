namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What predictions stand on while the newest recalculation found no answer: an earlier one, or what the practice's rows assume.</summary>
/// <param name="RecordsUpTo">The last day whose records are in the fit that is used; null where there is none, and the rows alone speak.</param>
/// <param name="Reason">Why the newest found none.</param>
public sealed record ModelBasis(LifetimeKind Quantity, LocalDate? RecordsUpTo, LifetimeFitNote Reason)
{
    /// <param name="used">The fit predictions read; null where they read none.</param>
    /// <param name="newest">The last that was made.</param>
    /// <returns>Null where there is nothing to say: the newest is the one that is used, or nothing was ever calculated.</returns>
    public static ModelBasis? Of(StoredFit? used, StoredFit? newest) =>
        newest is { Converged: false, Notes: [var reason, ..] } ? new(newest.Quantity, used?.DataCut, reason) : null;
}
