using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How well the promise was kept, as it is kept from one night to the next: of clients only their ids.</summary>
public sealed record KeptPromise(IReadOnlyList<SalonPromise> Salons, IReadOnlyList<ClientGap> Gaps)
{
    private const int Months = 12;

    internal static KeptPromise Of(IReadOnlyCollection<ClientHistory> clients, IEnumerable<Salon> salons, Instant now)
    {
        var (rows, gaps) = (new List<SalonPromise>(), new List<ClientGap>());
        var bySalon = clients.ToLookup(c => c.SalonId);
        foreach (var salon in salons)
        {
            var today = salon.DayOf(now);
            var from = today.PlusMonths(-Months).PlusDays(1);
            var sum = new SalonPromise(salon.Id, salon.Name);
            foreach (var client in bySalon[salon.Id])
            {
                var watch = GapFinder.Of(client.Hair, from, today);
                var (inTime, units) = TimelySuccessors.Of(client.Hair, from, today);
                sum = sum.With(watch, new Proportion(inTime, units));
                gaps.AddRange(watch.Gaps.Select(gap => new ClientGap(client.Id, gap)));
            }
            rows.Add(sum);
        }
        if (rows.Count > 1)
            rows.Add(rows.Aggregate(new SalonPromise(SalonId: null, ""), (all, one) => all + one));
        return new(rows, gaps);
    }

    /// <summary>With the names of those whom the reader may open now.</summary>
    internal async Task<PromiseKept> NamedAsync(ClinicDb db, IReadOnlyCollection<Salon> salons, CancellationToken cancellation)
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
            select new GapRow(client.Id, client.Code, client.Name, salon.Name, gap.Gap);
        return new(Salons, [.. rows]);
    }
}

/// <summary>Days one client had no hair.</summary>
public sealed record ClientGap(Guid ClientId, Gap Gap);
