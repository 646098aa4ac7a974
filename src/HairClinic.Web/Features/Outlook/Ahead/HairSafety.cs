using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using NodaTime;

namespace HairClinic.Web.Features.Outlook.Ahead;

/// <summary>How well the promise "never without hair" was kept in the last twelve months.</summary>
/// <param name="Salons">By salon; the last is all of them together where there are several.</param>
/// <param name="Breaches">The longest first.</param>
public sealed record HairSafety(IReadOnlyList<SalonSafety> Salons, IReadOnlyList<BreachRow> Breaches)
{
    /// <summary>Fewer units tell nothing yet.</summary>
    public const int FewestToTell = 30;

    private const int Months = 12;

    public IEnumerable<(BareCause Cause, int Breaches, int Days)> Causes =>
        Enum.GetValues<BareCause>()
            .Select(cause => (cause, rows: Breaches.Where(b => b.Breach.Cause == cause).ToList()))
            .Where(c => c.rows.Count > 0)
            .Select(c => (c.cause, c.rows.Count, c.rows.Sum(b => b.Breach.Days)));

    internal static HairSafety Of(IReadOnlyCollection<ClientHistory> clients, IEnumerable<Salon> salons, Instant now)
    {
        var (rows, breaches) = (new List<SalonSafety>(), new List<BreachRow>());
        var bySalon = clients.ToLookup(c => c.SalonId);
        foreach (var salon in salons)
        {
            var today = salon.DayOf(now);
            var from = today.PlusMonths(-Months).PlusDays(1);
            var sum = new SalonSafety(salon.Id, salon.Name);
            foreach (var client in bySalon[salon.Id])
            {
                var watch = HairBreaches.Of(client.Hair, from, today);
                var (inTime, units) = TimelySuccessors.Of(client.Hair, from, today);
                sum = sum.With(watch, new Proportion(inTime, units));
                breaches.AddRange(watch.Breaches.Select(b => new BreachRow(client.Id, client.Code, client.Name, salon.Name, b)));
            }
            rows.Add(sum);
        }
        if (rows.Count > 1)
            rows.Add(rows.Aggregate(new SalonSafety(SalonId: null, ""), (all, one) => all + one));
        return new(rows, [.. breaches.OrderByDescending(b => b.Breach.Days).ThenByDescending(b => b.Breach.From).ThenBy(b => b.Code)]);
    }
}
