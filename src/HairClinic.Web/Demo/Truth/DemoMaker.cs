using NodaTime;

namespace HairClinic.Web.Demo.Truth;

/// <summary>What is true of a workshop.</summary>
/// <param name="LeadDays">Half of its orders take longer: days on which it works, from order to arrival.</param>
/// <param name="LeadSpread">Standard deviation of the logarithm of those days.</param>
/// <param name="Life">Factor on the worn days of its units.</param>
public sealed record DemoMaker(string Name, double LeadDays, double LeadSpread, double Life)
{
    /// <summary>Six days on the road, three until it is acknowledged, and some knotting.</summary>
    private const int LeastDays = 21;

    public int DrawLead(Random random) => Math.Max(LeastDays, (int)Math.Round(LeadDays * Math.Exp(LeadSpread * random.Normal())));

    /// <summary>The day that ends so many working days after the order.</summary>
    public static LocalDate Arrival(LocalDate ordered, int workingDays, IReadOnlyList<DateInterval> closures)
    {
        var day = ordered;
        while (workingDays > 0)
        {
            day = day.PlusDays(1);
            if (!closures.Any(c => c.Contains(day)))
                workingDays--;
        }
        return day;
    }
}
