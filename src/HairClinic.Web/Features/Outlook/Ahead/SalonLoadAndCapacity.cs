namespace HairClinic.Web.Features.Outlook;

/// <summary>What is expected of a salon week by week, and what it has to meet it with.</summary>
/// <param name="SalonId">Null for the whole practice.</param>
/// <param name="From">The first day of the first week.</param>
/// <param name="Clients">Who wear hair there, or will.</param>
/// <param name="ChairMinutes">Open chairs, week by week.</param>
/// <param name="HandsMinutes">Stylists at work.</param>
public sealed record SalonLoadAndCapacity(
    Guid? SalonId,
    string Name,
    LocalDate From,
    int Clients,
    SalonLoad Load,
    double[] ChairMinutes,
    double[] HandsMinutes
)
{
    /// <summary>Without chairs, hours or people there is nothing to hold the load against.</summary>
    public bool CanBeHeldAgainst => ChairMinutes.Any(m => m > 0) && HandsMinutes.Any(m => m > 0);

    public int? FirstThatDoesNotFit => Load.FirstThatDoesNotFit(ChairMinutes, HandsMinutes);

    public LocalDate WeekStartAtIndex(int week) => From.PlusWeeks(week);

    /// <summary>All of them together: every number is the sum.</summary>
    internal static SalonLoadAndCapacity Sum(IReadOnlyList<SalonLoadAndCapacity> salons)
    {
        var weeks = salons.Max(s => s.Load.Weeks);
        var sum = new SalonLoadAndCapacity(
            SalonId: null,
            "",
            salons.Min(s => s.From),
            salons.Sum(s => s.Clients),
            new SalonLoad(weeks),
            new double[weeks],
            new double[weeks]
        );
        foreach (var salon in salons)
        {
            sum.Load.Add(salon.Load);
            for (var week = 0; week < weeks; week++)
            {
                sum.ChairMinutes[week] += salon.ChairMinutes[week];
                sum.HandsMinutes[week] += salon.HandsMinutes[week];
            }
        }
        return sum;
    }
}
