using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How well the promise "never without hair" was kept in the last twelve months.</summary>
/// <param name="Salons">By salon; the last is all of them together where there are several.</param>
/// <param name="Gaps">The longest first; as they are kept, without whose they are.</param>
public sealed record GapReport(IReadOnlyList<SalonPastGaps> Salons, IReadOnlyList<GapRow> Gaps)
{
    private const int Months = 12;

    /// <summary>Fewer units tell nothing yet.</summary>
    public const int FewestToTell = 30;

    public IEnumerable<(GapCause Cause, int Gaps, int Days)> Causes =>
        Enum.GetValues<GapCause>()
            .Select(cause => (cause, rows: Gaps.Where(b => b.Gap.Cause == cause).ToList()))
            .Where(c => c.rows.Count > 0)
            .Select(c => (c.cause, c.rows.Count, c.rows.Sum(b => b.Gap.Days)));

    internal static GapReport Measure(IReadOnlyCollection<ClientHairHistory> clients, IEnumerable<Salon> salons, Instant now)
    {
        var (rows, gaps) = (new List<SalonPastGaps>(), new List<GapRow>());
        var bySalon = clients.ToLookup(c => c.SalonId);
        foreach (var salon in salons)
        {
            var today = salon.DayOf(now);
            var from = today.PlusMonths(-Months).PlusDays(1);
            var sum = new SalonPastGaps(salon.Id, salon.Name);
            foreach (var client in bySalon[salon.Id])
            {
                var found = GapFinder.Find(client.Hair, from, today);
                var (inTime, units) = OnTimeReplacementCounter.Count(client.Hair, from, today);
                sum = sum.AddClient(found, new BinomialProportion(inTime, units));
                gaps.AddRange(found.Gaps.Select(gap => new GapRow(client.Id, "", "", "", gap)));
            }
            rows.Add(sum);
        }
        if (rows.Count > 1)
            rows.Add(rows.Aggregate(new SalonPastGaps(SalonId: null, ""), (all, one) => all + one));
        return new(rows, gaps);
    }

    /// <summary>With the names of those whom the reader may open now.</summary>
    internal async Task<GapReport> WithNamesAsync(ClinicDb db, IReadOnlyCollection<Salon> salons, CancellationToken cancellation)
    {
        var ids = Gaps.Select(g => g.ClientId).Distinct().ToList();
        var clients = await db
            .Clients.Where(c => ids.Contains(c.Id) && c.MergedIntoId == null && c.ErasedAt == null)
            .Select(c => new
            {
                c.Id,
                c.Code,
                c.Name,
                c.HomeSalonId,
            })
            .ToDictionaryAsync(c => c.Id, cancellation);
        var rows =
            from gap in Gaps
            where clients.ContainsKey(gap.ClientId)
            let client = clients[gap.ClientId]
            join salon in salons on client.HomeSalonId equals salon.Id
            orderby gap.Gap.Days descending, gap.Gap.From descending, client.Code
            select gap with
            {
                Code = client.Code,
                Name = client.Name,
                Salon = salon.Name,
            };
        return this with { Gaps = [.. rows] };
    }
}
