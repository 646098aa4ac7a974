using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>One workshop: how long it truly takes and how often a unit comes back, and the orders the practice has seen.</summary>
/// <remarks>Mean and variance of ln Λ are drawn from what the practice's row stands for: four orders, as the engine takes it.</remarks>
internal sealed class WorkshopStory
{
    private const int InspectionDays = 4;
    private readonly Dice dice;
    private readonly LeadTimePrior row;
    private readonly double halfDays;
    private readonly double mean;
    private readonly double spread;
    private readonly double remade;
    private readonly List<double> arrived = [];
    private readonly List<double> waiting = [];
    private RemakeRate rate = RemakeRate.Usual;

    public WorkshopStory(Dice dice, double halfDays, double nineInTenDays, WorkshopDays days)
    {
        (this.dice, this.halfDays, Days) = (dice, halfDays, days);
        row = new LeadTimePrior(halfDays, nineInTenDays);
        // The row's scale is the predictive one: it holds the doubt about the mean, a fifth of it, too.
        spread = Math.Sqrt(4 * (row.Scale * row.Scale * 4 / 5) / dice.ChiSquaredOf4());
        mean = row.Centre + spread / 2 * dice.Normal();
        remade = dice.BetaOf1(RemakeRate.Usual.Kept);
        for (var order = dice.Whole(0, 25); order > 0; order--)
        {
            arrived.Add(Whole(Making()));
            var again = dice.Chance(remade);
            rate = rate.Seen(again ? 1 : 0, again ? 0 : 1);
        }
    }

    public WorkshopDays Days { get; }

    /// <summary>The mean lead of somebody who takes means; the row's middle before any order arrived.</summary>
    public double MeanLead => arrived.Count > 0 ? arrived.Average() : halfDays;

    /// <summary>An order placed some days ago: true if it is still under way.</summary>
    public bool IsUnderWay(int waited)
    {
        var making = Making();
        if (making > waited)
            waiting.Add(waited);
        else
            arrived.Add(Whole(making));
        return making > waited;
    }

    /// <summary>What the engine believes of a new order.</summary>
    public LeadTable Believed() => LeadTable.Of(LeadTime.Of(row, arrived.ToArray(), waiting.ToArray()), rate.Mean, InspectionDays, 730);

    /// <summary>Days from today on which an order placed in so many days truly arrives.</summary>
    public double Arrives(int orderedInDays)
    {
        var working = Making();
        if (dice.Chance(remade))
            working += InspectionDays + Making();
        var total = Days.Until(orderedInDays) + working;
        var whole = (int)Math.Min(total, 100_000);
        var day = Days.DayOf(whole);
        return day == int.MaxValue ? total + 14 : Math.Max(day, orderedInDays) + (total - whole);
    }

    public static WorkshopStory[] Two(Dice dice, LocalDate today) =>
        [
            new(dice, 56, 77, new WorkshopDays(today, [], 1024)),
            new(dice, 42, 70, new WorkshopDays(today, [new DateInterval(today.PlusDays(40), today.PlusDays(53))], 1024)),
        ];

    private double Making() => Math.Exp(mean + spread * dice.Normal());

    private static double Whole(double days) => Math.Max(1, Math.Round(days));
}
