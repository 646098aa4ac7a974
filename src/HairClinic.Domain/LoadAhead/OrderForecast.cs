namespace HairClinic.Domain.LoadAhead;

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
    public IReadOnlyList<IReadOnlyList<VisitCount>> Scenarios { get; private set; } = [];

    public void Store(LocalDate from, OrderLoad load)
    {
        From = from;
        Scenarios = load.Scenarios();
    }

    public OrderLoad Load() => OrderLoad.FromScenarios(Scenarios);
}
