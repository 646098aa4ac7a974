using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>One workshop: how long it truly takes and how often a unit comes back, and the orders the practice has seen.</summary>
/// <remarks>Mean and variance of ln Λ are drawn from what the practice's row stands for: four orders, as the engine takes it.</remarks>
internal sealed class WorkshopStory
{
    private const int InspectionDays = 4;
    private readonly Dice _dice;
    private readonly LeadTimePrior _row;
    private readonly double _halfDays;
    private readonly double _mean;
    private readonly double _spread;
    private readonly double _remade;
    private readonly List<double> _arrived = [];
    private readonly List<double> _waiting = [];
    private RemakeRate _rate = RemakeRate.Usual;

    public WorkshopStory(Dice dice, double halfDays, double nineInTenDays, WorkshopWorkingDays days)
    {
        (_dice, _halfDays, Days) = (dice, halfDays, days);
        _row = new LeadTimePrior(halfDays, nineInTenDays);
        // The row's scale is the predictive one: it holds the doubt about the mean, a fifth of it, too.
        _spread = Math.Sqrt(4 * (_row.Scale * _row.Scale * 4 / 5) / dice.ChiSquaredOf4());
        _mean = _row.Centre + _spread / 2 * dice.Normal();
        _remade = dice.BetaOf1(RemakeRate.Usual.Kept);
        for (var order = dice.Whole(0, 25); order > 0; order--)
        {
            _arrived.Add(Whole(Making()));
            var again = dice.Chance(_remade);
            _rate = _rate.AddOutcomes(again ? 1 : 0, again ? 0 : 1);
        }
    }

    public WorkshopWorkingDays Days { get; }

    /// <summary>The mean lead of somebody who takes means; the row's middle before any order arrived.</summary>
    public double MeanLead => _arrived.Count > 0 ? _arrived.Average() : _halfDays;

    /// <summary>An order placed some days ago: true if it is still under way.</summary>
    public bool IsUnderWay(int waited)
    {
        var making = Making();
        if (making > waited)
            _waiting.Add(waited);
        else
            _arrived.Add(Whole(making));
        return making > waited;
    }

    /// <summary>What the engine believes of a new order.</summary>
    public LeadTimeTable Believed() =>
        LeadTimeTable.FromLeadTime(LeadTime.Learn(_row, _arrived.ToArray(), _waiting.ToArray()), _rate.Mean, InspectionDays, 730);

    /// <summary>Days from today on which an order placed in so many days truly arrives.</summary>
    public double Arrives(int orderedInDays)
    {
        var working = Making();
        if (_dice.Chance(_remade))
            working += InspectionDays + Making();
        var total = Days.CountUntil(orderedInDays) + working;
        var whole = (int)Math.Min(total, 100_000);
        var day = Days.CalendarDayAfter(whole);
        return day == int.MaxValue ? total + 14 : Math.Max(day, orderedInDays) + (total - whole);
    }

    public static WorkshopStory[] Two(Dice dice, LocalDate today) =>
        [
            new(dice, 56, 77, new WorkshopWorkingDays(today, [], 1024)),
            new(dice, 42, 70, new WorkshopWorkingDays(today, [new DateInterval(today.PlusDays(40), today.PlusDays(53))], 1024)),
        ];

    private double Making() => Math.Exp(_mean + _spread * _dice.Normal());

    private static double Whole(double days) => Math.Max(1, Math.Round(days));
}
