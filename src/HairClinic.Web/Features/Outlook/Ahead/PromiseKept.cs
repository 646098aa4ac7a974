using HairClinic.Domain.Replacement;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How well the promise "never without hair" was kept in the last twelve months.</summary>
/// <param name="Salons">By salon; the last is all of them together where there are several.</param>
/// <param name="Gaps">The longest first.</param>
public sealed record PromiseKept(IReadOnlyList<SalonPromise> Salons, IReadOnlyList<GapRow> Gaps)
{
    /// <summary>Fewer units tell nothing yet.</summary>
    public const int FewestToTell = 30;

    public IEnumerable<(GapCause Cause, int Gaps, int Days)> Causes =>
        Enum.GetValues<GapCause>()
            .Select(cause => (cause, rows: Gaps.Where(b => b.Gap.Cause == cause).ToList()))
            .Where(c => c.rows.Count > 0)
            .Select(c => (c.cause, c.rows.Count, c.rows.Sum(b => b.Gap.Days)));
}
