namespace HairClinic.Domain.LoadAhead;

/// <summary>Orders by month, summed over clients under each scenario of what they share, as <see cref="SalonLoad"/> does for visits.</summary>
public sealed class OrderLoad(int months)
{
    private readonly VisitCount[,] _sums = new VisitCount[LoadScenario.Three.Count, months];

    public int Months => months;

    public void Add(int scenario, int month, VisitCount client)
    {
        var sum = _sums[scenario, month];
        _sums[scenario, month] = new(sum.Mean + client.Mean, sum.Variance + client.Variance);
    }

    public void Add(OrderLoad other)
    {
        for (var scenario = 0; scenario < LoadScenario.Three.Count; scenario++)
        {
            for (var month = 0; month < months; month++)
                Add(scenario, month, other._sums[scenario, month]);
        }
    }

    /// <summary>Expected orders of the month; the variance holds the clients' own chance and the doubt about what they share.</summary>
    public VisitCount Month(int month)
    {
        var (mean, variance) = LoadScenario.Mixed(s => (_sums[s, month].Mean, _sums[s, month].Variance));
        return new(mean, variance);
    }

    /// <summary>Within which the month's orders lie with 80 % chance.</summary>
    public (double From, double To) Band(int month) => LoadScenario.Band(Month(month).Mean, Month(month).Variance);

    public IReadOnlyList<IReadOnlyList<VisitCount>> Scenarios() =>
        [
            .. Enumerable
                .Range(0, LoadScenario.Three.Count)
                .Select(s => (IReadOnlyList<VisitCount>)[.. Enumerable.Range(0, months).Select(m => _sums[s, m])]),
        ];

    public static OrderLoad FromScenarios(IReadOnlyList<IReadOnlyList<VisitCount>> scenarios)
    {
        var load = new OrderLoad(scenarios.Count == 0 ? 0 : scenarios[0].Count);
        for (var scenario = 0; scenario < scenarios.Count; scenario++)
        {
            for (var month = 0; month < load.Months; month++)
                load.Add(scenario, month, scenarios[scenario][month]);
        }
        return load;
    }
}

/// <summary>How many visits of a kind one client makes in a stretch of days.</summary>
public readonly record struct VisitCount(double Mean, double Variance)
{
    /// <summary>At most one visit, with this chance.</summary>
    public static VisitCount AtMostOne(double chance) => new(chance, chance * (1 - Math.Min(1, chance)));
}
