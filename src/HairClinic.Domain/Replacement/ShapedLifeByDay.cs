using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>As <see cref="RemainingLifeByDay"/>, for a unit of which more than one thing may be true.</summary>
/// <param name="centre">Of ln T, the client's effect included.</param>
/// <param name="wornDays">Until today.</param>
/// <param name="clock">Its own.</param>
internal readonly ref struct ShapedLifeByDay(LifeShape shape, double centre, int wornDays, RepairClock clock = default)
{
    private readonly double _logAge = Math.Log(clock.AgeAfter(wornDays));
    private readonly double _atAge = shape.LogSurvival(Math.Log(clock.AgeAfter(wornDays)), Math.Log(clock.AgeAfter(wornDays)), centre);

    /// <summary>Adds a share of the chance that it is worn out before each day.</summary>
    public void AddCumulativeTo(Span<double> table, double share)
    {
        var (first, end) = Stretch(table.Length);
        for (var day = first; day < end; day++)
            table[day] += share * EndedWithin(day);
        for (var day = end; day < table.Length; day++)
            table[day] += share;
    }

    /// <summary>Puts on each day the chance that it is worn out within half a day of it.</summary>
    public void WriteProbabilitiesTo(DayProbabilities onto)
    {
        onto.Clear();
        var (first, end) = Stretch(onto.Mass.Length);
        (onto.First, onto.End) = (first, end);
        var before = 0.0;
        for (var day = first; day < end; day++)
        {
            var ended = EndedWithin(day + 0.5);
            (onto.Mass[day], before) = (ended - before, ended);
        }
    }

    private double EndedWithin(double days)
    {
        // No curve reaches so far: it is worn out by now.
        if (double.IsNegativeInfinity(_atAge))
            return 1;
        return 1 - Math.Exp(shape.LogSurvival(_logAge, Math.Log(clock.AgeAfter(wornDays + days)), centre) - _atAge);
    }

    // The days before which next to nothing, and after which next to everything, is worn out.
    private (int First, int End) Stretch(int length)
    {
        var first = FirstWith(DayProbabilities.Sliver, 0, length);
        return (first, Math.Min(length, FirstWith(1 - DayProbabilities.Sliver, first, length) + 2));
    }

    private int FirstWith(double chance, int low, int high)
    {
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = EndedWithin(middle + 0.5) < chance ? (middle + 1, high) : (low, middle);
        }
        return low;
    }
}
