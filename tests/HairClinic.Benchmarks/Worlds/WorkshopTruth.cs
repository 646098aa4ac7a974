using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Replacement;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>How long one workshop truly takes, and what is not in the book: its closure, its slow orders, what it makes again.</summary>
/// <remarks>
/// Mean and variance of ln lead are drawn from what the practice's row stands for: four orders, as the engine takes it. The row's
/// own tail is cut: no workshop spreads more than twice as far as its row says. Beyond that one order of twenty may take longer than can be
/// looked ahead, and a practice that does as it is told would order every day.
/// </remarks>
internal sealed class WorkshopTruth
{
    private readonly World _world;
    private readonly double _mean;
    private readonly double _spread;

    public WorkshopTruth(World world, Dice dice, LeadTimePrior row)
    {
        _world = world;
        // The row's scale is the predictive one: it holds the doubt about the mean, a fifth of it, too.
        var usual = Math.Sqrt(row.Scale * row.Scale * 4 / 5);
        _spread = usual * Math.Min(2, Math.Sqrt(4 / dice.ChiSquaredOf4()));
        _mean = row.Centre + _spread / 2 * dice.Normal();
    }

    public Delivery Deliver(int orderedOn, Dice dice)
    {
        var arrives = AfterWork(orderedOn, Making(dice));
        var remade = dice.Chance(_world.RemakeShare);
        var again = Making(dice);
        int? faulty = remade ? arrives : null;
        if (remade)
            arrives = AfterWork(arrives + PracticeRows.InspectionDays, again);
        return new(orderedOn, arrives, faulty, arrives + dice.Whole(_world.Preparation.From, _world.Preparation.Through));
    }

    private int Making(Dice dice)
    {
        var (noise, slow) = (dice.Normal(), dice.Chance(_world.SlowShare));
        return (int)Math.Max(1, Math.Round(Math.Min(1000, Math.Exp(_mean + _spread * noise) * (slow ? 2 : 1))));
    }

    private int AfterWork(int day, int workingDays)
    {
        while (workingDays > 0)
        {
            if (!IsClosed(++day))
                workingDays--;
        }
        return day;
    }

    private bool IsClosed(int day) =>
        _world.IsClosedAtNewYear && PracticeRows.DateOf(day) is { Month: 12, Day: >= 20 } or { Month: 1, Day: <= 9 };
}

/// <summary>One order from the day it is placed.</summary>
/// <param name="ArrivesOn">For good.</param>
/// <param name="FaultyOn">It came then first, and was sent back.</param>
internal readonly record struct Delivery(int OrderedOn, int ArrivesOn, int? FaultyOn, int ReadyOn);
