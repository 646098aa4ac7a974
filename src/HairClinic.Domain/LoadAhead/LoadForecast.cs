namespace HairClinic.Domain.LoadAhead;

/// <summary>A salon's weeks ahead as they were calculated last: one row a salon, replaced each night.</summary>
public sealed class LoadForecast : PracticeOwned
{
    private LoadForecast() { }

    public LoadForecast(Guid id, Guid salonId) => (Id, SalonId) = (id, salonId);

    public Guid SalonId { get; private set; }

    /// <summary>The first day of the first week.</summary>
    public LocalDate From { get; private set; }

    public int Clients { get; private set; }

    /// <summary>Scenario by scenario and week by week; see <see cref="SalonLoad"/>.</summary>
    public IReadOnlyList<IReadOnlyList<WeekLoad>> Scenarios { get; private set; } = [];

    public void Store(LocalDate from, int clients, SalonLoad load)
    {
        (From, Clients) = (from, clients);
        Scenarios = load.Scenarios();
    }

    public SalonLoad Load() => SalonLoad.FromScenarios(Scenarios);
}
