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

    public static SalonLoad Of(IReadOnlyList<IReadOnlyList<WeekLoad>> scenarios)
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
