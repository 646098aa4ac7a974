using System.Numerics;

namespace HairClinic.Domain.LoadAhead;

/// <summary>Sums over clients, week by week or month by month, under each scenario of what all clients share.</summary>
/// <remarks>
/// Within a scenario clients are independent, so their variances add. What they share moves them all alike: its part of a
/// band is how far the scenarios' sums lie apart, and shrinks with no number of clients.
/// </remarks>
public abstract class ScenarioSums<T>(int periods)
    where T : struct, IAdditionOperators<T, T, T>
{
    private readonly T[,] _sums = new T[PracticeEffectNode.Three.Count, periods];

    protected ScenarioSums(IReadOnlyList<IReadOnlyList<T>> scenarios)
        : this(scenarios.Count == 0 ? 0 : scenarios[0].Count)
    {
        for (var scenario = 0; scenario < scenarios.Count; scenario++)
        {
            for (var period = 0; period < Periods; period++)
                Add(scenario, period, scenarios[scenario][period]);
        }
    }

    protected int Periods => periods;

    protected T this[int scenario, int period] => _sums[scenario, period];

    /// <summary>The sums, scenario by scenario and period by period: what is stored.</summary>
    public IReadOnlyList<IReadOnlyList<T>> SumsByScenario() =>
        [
            .. Enumerable
                .Range(0, PracticeEffectNode.Three.Count)
                .Select(s => (IReadOnlyList<T>)[.. Enumerable.Range(0, periods).Select(p => _sums[s, p])]),
        ];

    public void Add(int scenario, int period, T client) => _sums[scenario, period] += client;

    /// <summary>The same periods together: means and variances add up within each scenario.</summary>
    public void Add(ScenarioSums<T> other)
    {
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
        {
            for (var period = 0; period < periods; period++)
                Add(scenario, period, other[scenario, period]);
        }
    }
}
