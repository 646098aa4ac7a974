using HairClinic.Domain.Orders;
using HairClinic.Domain.Replacement;
using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>The practice's side of every next order: settings, salons, kinds, workshops, models. Read once for many clients.</summary>
public sealed class OrderFacts
{
    private readonly PracticeSettings _settings;
    private readonly Dictionary<Guid, Salon> _salons;
    private readonly Dictionary<Guid, OpeningDays> _opening;
    private readonly Dictionary<Guid, Workshop> _workshops;
    private readonly Dictionary<Guid, StoredLead> _leads;
    private readonly Dictionary<LocalDate, OrderTimes> _orders = [];

    private OrderFacts(
        PracticeSettings settings,
        List<Salon> salons,
        Dictionary<Guid, Workshop> workshops,
        Dictionary<Guid, UnitKindTerms> kinds,
        Dictionary<Guid, StoredLead> leads,
        WearModels models
    )
    {
        _settings = settings;
        _salons = salons.ToDictionary(s => s.Id);
        _opening = salons.ToDictionary(s => s.Id, DueBasis.OpeningOf);
        (_workshops, Kinds, _leads, WearModels) = (workshops, kinds, leads, models);
    }

    public PracticeSettings Settings => _settings;

    public IReadOnlyDictionary<Guid, Salon> Salons => _salons;

    public IReadOnlyDictionary<Guid, UnitKindTerms> Kinds { get; }

    public IReadOnlyDictionary<Guid, Workshop> Workshops => _workshops;

    public WearModels WearModels { get; }

    /// <summary>Six round trips.</summary>
    public static async Task<OrderFacts> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var (settings, models) = await WearModels.WithSettingsAsync(db, cancellation);
        return new(
            settings,
            await db.Salons.AsNoTracking().Include(s => s.Hours).Include(s => s.Closures).ToListAsync(cancellation),
            await db.Workshops.AsNoTracking().Include(w => w.Closures).ToDictionaryAsync(w => w.Id, cancellation),
            await LifeSpells.KindsAsync(db, cancellation),
            await db.StoredLeads.AsNoTracking().ToDictionaryAsync(s => s.UnitKindId, cancellation),
            models
        );
    }

    /// <summary>Lead times as seen on a day.</summary>
    public OrderTimes OrdersOn(LocalDate today) =>
        _orders.TryGetValue(today, out var known) ? known : _orders[today] = new OrderTimes(Kinds, _workshops, _leads, today);

    /// <returns>Null for who has never worn a unit, wears none any more, or is none of the practice's any more.</returns>
    public ReorderCase? CaseOf(ClientUnits client)
    {
        var today = client.Today;
        if (HairLapse.HasLapsed(client.LastWornOn, today) || client.Newest is not { } newest)
            return null;
        var nodes = WearModels.Life.NodesFor(client.Lives);
        var orders = OrdersOn(today);
        var inHand = client.InHand.ToList();
        // The soonest expected first.
        var inFlight = client.Units.Where(u => u.State.IsInFlight()).OrderBy(orders.Likely).ToList();
        var next = Kinds[newest.UnitKindId];
        var nextColumns = client.ColumnsOf(null, next);
        var question = new ReorderInput(
            LifeDistribution.Weibull,
            nodes.Few(),
            [.. inHand.Select(u => InHandOf(client, u, client.WornDays(u.Id)))],
            [.. inFlight.Select(u => new UnitInFlight(InHandOf(client, u, 0), orders.InFlight(u), orders.DaysOf(u.UnitKindId)))],
            orders.New(next.Id),
            orders.DaysOf(next.Id),
            _settings.PreparationDays
        )
        {
            Alpha = _settings.GapChancePercent / 100.0,
        };
        return new ReorderCase(
            client.ClientId,
            today,
            next.Id,
            question,
            InHandOf(next.Life(), nextColumns, 0),
            _opening[client.SalonId],
            WearModels.Life.Predict(nodes, next.Life(), nextColumns)
        )
        {
            OnHead = client.Units.Any(u => u.State == UnitState.Bonded),
            InHand = [.. inHand.Select(u => u.Id)],
            InFlight = [.. inFlight.Select(u => u.Id)],
            Emergency = [.. client.Emergency.Select(u => u.Id)],
            Left = client.LivesLeft(WearModels.Life, Kinds),
            Lives = client.Lives,
            EffectOfNew = WearModels.Life.Effect(nextColumns),
        };
    }

    private UnitInHand InHandOf(ClientUnits client, HairSystem unit, int worn) =>
        InHandOf(Kinds[unit.UnitKindId].Life(), client.ColumnsOf(unit, Kinds[unit.UnitKindId]), worn);

    private UnitInHand InHandOf(WindowPrior life, IReadOnlyList<WearCovariate> columns, int worn) =>
        new(life.Centre + WearModels.Life.Effect(columns), life.Width, life.Sigma * Math.Exp(WearModels.Life.Population.LogScale), worn);
}
