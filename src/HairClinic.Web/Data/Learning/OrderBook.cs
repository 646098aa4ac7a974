using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Learning;

/// <summary>The practice's side of every next order: settings, salons, kinds, workshops, beliefs. Read once for many clients.</summary>
public sealed class OrderBook
{
    /// <summary>Whoever wears nothing for longer than this is taken to have left.</summary>
    public const int LapsedAfterDays = 60;

    private readonly PracticeSettings settings;
    private readonly Dictionary<Guid, Salon> salons;
    private readonly Dictionary<Guid, OpeningDays> opening;
    private readonly Dictionary<Guid, Workshop> workshops;
    private readonly Dictionary<Guid, StoredLead> leads;
    private readonly Dictionary<LocalDate, OrderTimes> orders = [];

    private OrderBook(
        PracticeSettings settings,
        List<Salon> salons,
        Dictionary<Guid, Workshop> workshops,
        Dictionary<Guid, UnitSort> sorts,
        Dictionary<Guid, StoredLead> leads,
        Beliefs beliefs
    )
    {
        this.settings = settings;
        this.salons = salons.ToDictionary(s => s.Id);
        opening = salons.ToDictionary(s => s.Id, DueBasis.OpeningOf);
        (this.workshops, Sorts, this.leads, Beliefs) = (workshops, sorts, leads, beliefs);
    }

    public PracticeSettings Settings => settings;

    public IReadOnlyDictionary<Guid, Salon> Salons => salons;

    public IReadOnlyDictionary<Guid, UnitSort> Sorts { get; }

    public IReadOnlyDictionary<Guid, Workshop> Workshops => workshops;

    public Beliefs Beliefs { get; }

    public static async Task<OrderBook> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(
            await db.PracticeSettings.AsNoTracking().SingleAsync(cancellation),
            await db.Salons.AsNoTracking().Include(s => s.Hours).Include(s => s.Closures).AsSplitQuery().ToListAsync(cancellation),
            await db.Workshops.AsNoTracking().Include(w => w.Closures).ToDictionaryAsync(w => w.Id, cancellation),
            await LifeSpells.KindsAsync(db, cancellation),
            await db.StoredLeads.AsNoTracking().ToDictionaryAsync(s => s.UnitKindId, cancellation),
            await Beliefs.LoadAsync(db, cancellation)
        );

    /// <summary>Lead times as seen on a day.</summary>
    public OrderTimes OrdersOn(LocalDate today) =>
        orders.TryGetValue(today, out var known) ? known : orders[today] = new OrderTimes(Sorts, workshops, leads, today);

    /// <returns>Null for who has never worn a unit, wears none any more, or is none of the practice's any more.</returns>
    public OrderCase? CaseOf(ClientUnits client)
    {
        var today = client.Today;
        if (!client.IsWearing(today, LapsedAfterDays) || client.Newest is not { } newest)
            return null;
        var nodes = Beliefs.Life.Of(client.Lives);
        var few = nodes.Few();
        var orders = OrdersOn(today);
        var (hand, flight, emergency) = (new List<Guid>(), new List<Guid>(), new List<Guid>());
        var (inHand, inFlight) = (new List<UnitInHand>(), new List<(UnitInFlight Unit, LocalDate Likely, Guid Id)>());
        var left = new Dictionary<Guid, (LifePrediction, int)>();
        foreach (var unit in client.Units)
        {
            var sort = Sorts[unit.UnitKindId];
            var life = sort.Life();
            var columns = client.ColumnsOf(unit, sort);
            var worn = client.WornDays(unit.Id);
            var asUnit = InHandOf(life, columns, worn);
            if (unit.State.IsInFlight())
            {
                var likely = orders.Arrival(unit).Early;
                inFlight.Add(
                    (new UnitInFlight(asUnit with { WornDays = 0 }, orders.InFlight(unit), orders.DaysOf(unit.UnitKindId)), likely, unit.Id)
                );
            }
            else if (unit.State == UnitState.EmergencySpare || client.IsWornOut(unit.Id) && !unit.State.IsGone())
                emergency.Add(unit.Id);
            else if (unit.State is UnitState.Bonded or UnitState.Arrived or UnitState.Inspected || unit.State.IsBondable())
            {
                hand.Add(unit.Id);
                inHand.Add(asUnit);
                left[unit.Id] = (Beliefs.Life.Predict(nodes, life, columns), worn);
            }
        }
        inFlight.Sort((a, b) => a.Likely.CompareTo(b.Likely));
        flight.AddRange(inFlight.Select(f => f.Id));
        var next = Sorts[newest.UnitKindId];
        var nextColumns = client.ColumnsOf(null, next);
        var question = new GapQuestion(
            LifeDistribution.Weibull,
            few,
            inHand,
            [.. inFlight.Select(f => f.Unit)],
            orders.New(next.Id),
            orders.DaysOf(next.Id),
            settings.PreparationDays
        )
        {
            Alpha = settings.GapChancePercent / 100.0,
        };
        return new OrderCase(
            client.ClientId,
            today,
            next.Id,
            question,
            InHandOf(next.Life(), nextColumns, 0),
            opening[client.SalonId],
            Beliefs.Life.Predict(nodes, next.Life(), nextColumns)
        )
        {
            InHand = hand,
            InFlight = flight,
            Emergency = emergency,
            Left = left,
            Lives = client.Lives,
            EffectOfNew = Beliefs.Life.Effect(nextColumns),
        };
    }

    private UnitInHand InHandOf(WindowPrior life, IReadOnlyList<WearColumn> columns, int worn) =>
        new(life.Centre + Beliefs.Life.Effect(columns), life.Width, life.Sigma * Math.Exp(Beliefs.Life.Population.LogScale), worn);
}
