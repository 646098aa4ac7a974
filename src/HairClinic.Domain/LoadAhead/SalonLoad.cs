using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.LoadAhead;

/// <summary>A salon's weeks ahead, summed over its clients under each scenario of what they share.</summary>
/// <remarks>
/// Within a scenario clients have nothing to do with each other, so their variances add. What they share moves them all
/// alike: its part of a band is how far the scenarios' sums lie apart, and shrinks with no number of clients.
/// </remarks>
public sealed class SalonLoad(int weeks)
{
    private readonly WeekLoad[,] _sums = new WeekLoad[LoadScenario.Three.Count, weeks];

    public int Weeks => weeks;

    /// <summary>The sums, scenario by scenario and week by week: what is stored.</summary>
    public IReadOnlyList<IReadOnlyList<WeekLoad>> Scenarios() =>
        [
            .. Enumerable
                .Range(0, LoadScenario.Three.Count)
                .Select(s => (IReadOnlyList<WeekLoad>)[.. Enumerable.Range(0, weeks).Select(w => _sums[s, w])]),
        ];

    public static SalonLoad FromScenarios(IReadOnlyList<IReadOnlyList<WeekLoad>> scenarios)
    {
        var load = new SalonLoad(scenarios.Count == 0 ? 0 : scenarios[0].Count);
        for (var scenario = 0; scenario < scenarios.Count; scenario++)
        {
            for (var week = 0; week < load.Weeks; week++)
                load.Add(scenario, week, scenarios[scenario][week]);
        }
        return load;
    }

    public void Add(int scenario, int week, WeekLoad client) => _sums[scenario, week] += client;

    /// <summary>The same salons' weeks together: means and variances add up within each scenario.</summary>
    public void Add(SalonLoad other)
    {
        for (var scenario = 0; scenario < LoadScenario.Three.Count; scenario++)
        {
            for (var week = 0; week < weeks; week++)
                _sums[scenario, week] += other._sums[scenario, week];
        }
    }

    /// <summary>The week's means; its variances hold the clients' own chance and the doubt about what they share.</summary>
    public WeekLoad Week(int week)
    {
        var chair = LoadScenario.Mixed(s => (_sums[s, week].ChairMinutes, _sums[s, week].ChairVariance));
        var hands = LoadScenario.Mixed(s => (_sums[s, week].HandsOnMinutes, _sums[s, week].HandsOnVariance));
        return new(
            Mean(load => load.Rebonds),
            Mean(load => load.Washes),
            Mean(load => load.Fittings),
            chair.Mean,
            hands.Mean,
            chair.Variance,
            hands.Variance
        );

        double Mean(Func<WeekLoad, double> count) => LoadScenario.Mixed(s => (count(_sums[s, week]), 0)).Mean;
    }

    /// <summary>Within which chair-minutes lie with 80 % chance.</summary>
    public (double From, double To) ChairBand(int week) => LoadScenario.Band(Week(week).ChairMinutes, Week(week).ChairVariance);

    /// <summary>As <see cref="ChairBand"/>, of a stylist's minutes.</summary>
    public (double From, double To) HandsOnBand(int week) => LoadScenario.Band(Week(week).HandsOnMinutes, Week(week).HandsOnVariance);

    /// <summary>The first week whose expected minutes are more than there is; null where all fit.</summary>
    /// <param name="chair">Chair-minutes of each week's opening hours.</param>
    /// <param name="handsOn">Stylists' minutes of each week.</param>
    public int? FirstThatDoesNotFit(ReadOnlySpan<double> chair, ReadOnlySpan<double> handsOn)
    {
        for (var week = 0; week < weeks; week++)
        {
            if (Week(week).ChairMinutes > chair[week] || Week(week).HandsOnMinutes > handsOn[week])
                return week;
        }
        return null;
    }
}

/// <summary>One value of what all clients share (δ of the fit) and how much it is believed.</summary>
/// <param name="Shift">In standard deviations of δ.</param>
public readonly record struct LoadScenario(double Shift, double Share)
{
    /// <summary>Gauss's rule of three for a normal: exact where the load bends gently with δ.</summary>
    public static readonly IReadOnlyList<LoadScenario> Three =
    [
        new(-1.7320508075688772, 1 / 6.0),
        new(0, 2 / 3.0),
        new(1.7320508075688772, 1 / 6.0),
    ];

    /// <summary>The mean over the scenarios; the variance holds the clients' own chance and how far the scenarios lie apart.</summary>
    /// <param name="counts">One a scenario.</param>
    internal static (double Mean, double Variance) Mixed(Func<int, (double Mean, double Variance)> counts)
    {
        var (mean, variance) = (0.0, 0.0);
        for (var scenario = 0; scenario < Three.Count; scenario++)
        {
            mean += Three[scenario].Share * counts(scenario).Mean;
            variance += Three[scenario].Share * counts(scenario).Variance;
        }
        for (var scenario = 0; scenario < Three.Count; scenario++)
            variance += Three[scenario].Share * Math.Pow(counts(scenario).Mean - mean, 2);
        return (mean, variance);
    }

    /// <summary>Within which it lies with 80 % chance; never below 0.</summary>
    internal static (double From, double To) Band(double mean, double variance) =>
        (Math.Max(0, mean - NormalBand.EightyPercent * Math.Sqrt(variance)), mean + NormalBand.EightyPercent * Math.Sqrt(variance));
}

/// <summary>What is expected of one week. Means add up exactly over clients and salons; so do variances of what is not shared.</summary>
public readonly record struct WeekLoad(
    double Rebonds,
    double Washes,
    double Fittings,
    double ChairMinutes,
    double HandsOnMinutes,
    double ChairVariance,
    double HandsOnVariance
)
{
    public static WeekLoad operator +(WeekLoad one, WeekLoad other) =>
        new(
            one.Rebonds + other.Rebonds,
            one.Washes + other.Washes,
            one.Fittings + other.Fittings,
            one.ChairMinutes + other.ChairMinutes,
            one.HandsOnMinutes + other.HandsOnMinutes,
            one.ChairVariance + other.ChairVariance,
            one.HandsOnVariance + other.HandsOnVariance
        );

    /// <summary>Mean and variance of so many visits of a kind.</summary>
    public static WeekLoad FromCounts(VisitCount rebonds, VisitCount washes, VisitCount fittings, LoadMinutes each) =>
        new(
            rebonds.Mean,
            washes.Mean,
            fittings.Mean,
            rebonds.Mean * each.Rebond.Chair + washes.Mean * each.Wash.Chair + fittings.Mean * each.Fitting.Chair,
            rebonds.Mean * each.Rebond.HandsOn + washes.Mean * each.Wash.HandsOn + fittings.Mean * each.Fitting.HandsOn,
            Square(each.Rebond.Chair) * rebonds.Variance
                + Square(each.Wash.Chair) * washes.Variance
                + Square(each.Fitting.Chair) * fittings.Variance,
            Square(each.Rebond.HandsOn) * rebonds.Variance
                + Square(each.Wash.HandsOn) * washes.Variance
                + Square(each.Fitting.HandsOn) * fittings.Variance
        );

    private static double Square(double value) => value * value;
}
