using System.Numerics;

namespace HairClinic.Domain.LoadAhead;

/// <summary>Orders by month.</summary>
public sealed class OrderLoad : ScenarioSums<CountMoments>
{
    public OrderLoad(int months)
        : base(months) { }

    public OrderLoad(IReadOnlyList<IReadOnlyList<CountMoments>> scenarios)
        : base(scenarios) { }

    public int Months => Periods;

    /// <summary>Expected orders of the month; the variance includes the clients' own chance and the uncertainty about what they share.</summary>
    public CountMoments Month(int month)
    {
        var (mean, variance) = PracticeEffectNode.MixtureMoments(s => (this[s, month].Mean, this[s, month].Variance));
        return new(mean, variance);
    }

    /// <summary>The 80 % interval of the month's orders.</summary>
    public (double From, double To) Band(int month) => PracticeEffectNode.EightyPercentInterval(Month(month).Mean, Month(month).Variance);
}

/// <summary>How many visits of a kind one client makes in a stretch of days.</summary>
public readonly record struct CountMoments(double Mean, double Variance) : IAdditionOperators<CountMoments, CountMoments, CountMoments>
{
    public static CountMoments operator +(CountMoments one, CountMoments other) =>
        new(one.Mean + other.Mean, one.Variance + other.Variance);

    /// <summary>At most one visit, with this chance.</summary>
    public static CountMoments Bernoulli(double chance) => new(chance, chance * (1 - Math.Min(1, chance)));
}

/// <summary>The orders to expect at one workshop, month by month, as they were calculated last.</summary>
public sealed class OrderForecast : PracticeOwned
{
    private OrderForecast() { }

    public OrderForecast(Guid id, Guid? workshopId) => (Id, WorkshopId) = (id, workshopId);

    /// <summary>Null for kinds whose workshop is not known.</summary>
    public Guid? WorkshopId { get; private set; }

    /// <summary>The first day of the first month.</summary>
    public LocalDate From { get; private set; }

    /// <summary>Scenario by scenario and month by month.</summary>
    public IReadOnlyList<IReadOnlyList<CountMoments>> Scenarios { get; private set; } = [];

    public void SetLoad(LocalDate from, OrderLoad load)
    {
        From = from;
        Scenarios = load.SumsByScenario();
    }

    public OrderLoad ToOrderLoad() => new(Scenarios);
}
