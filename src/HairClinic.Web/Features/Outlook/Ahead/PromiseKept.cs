using HairClinic.Domain.Replacement;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How well the promise "never without hair" was kept in the last twelve months.</summary>
/// <param name="Salons">By salon; the last is all of them together where there are several.</param>
/// <param name="Gaps">The longest first.</param>
public sealed record PromiseKept(IReadOnlyList<SalonPromise> Salons, IReadOnlyList<GapRow> Gaps)
{
    /// <summary>Fewer units tell nothing yet.</summary>
    public const int FewestToTell = 30;

    private const int Months = 12;

    public IEnumerable<(GapCause Cause, int Gaps, int Days)> Causes =>
        Enum.GetValues<GapCause>()
            .Select(cause => (cause, rows: Gaps.Where(b => b.Gap.Cause == cause).ToList()))
            .Where(c => c.rows.Count > 0)
            .Select(c => (c.cause, c.rows.Count, c.rows.Sum(b => b.Gap.Days)));

    internal static PromiseKept Measure(IReadOnlyCollection<ClientHistory> clients, IEnumerable<Salon> salons, Instant now)
    {
        var (rows, gaps) = (new List<SalonPromise>(), new List<GapRow>());
        var bySalon = clients.ToLookup(c => c.SalonId);
        foreach (var salon in salons)
        {
            var today = salon.DayOf(now);
            var from = today.PlusMonths(-Months).PlusDays(1);
            var sum = new SalonPromise(salon.Id, salon.Name);
            foreach (var client in bySalon[salon.Id])
            {
                var found = GapFinder.Find(client.Hair, from, today);
                var (inTime, units) = TimelySuccessors.Count(client.Hair, from, today);
                sum = sum.With(found, new Proportion(inTime, units));
                gaps.AddRange(found.Gaps.Select(b => new GapRow(client.Id, client.Code, client.Name, salon.Name, b)));
            }
            rows.Add(sum);
        }
        if (rows.Count > 1)
            rows.Add(rows.Aggregate(new SalonPromise(SalonId: null, ""), (all, one) => all + one));
        return new(rows, [.. gaps.OrderByDescending(b => b.Gap.Days).ThenByDescending(b => b.Gap.From).ThenBy(b => b.Code)]);
    }
}
