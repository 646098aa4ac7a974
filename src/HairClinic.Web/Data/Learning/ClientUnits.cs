using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear.Lifetimes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Learning;

/// <summary>One client's units with what they were worn and how they looked, as of a day.</summary>
public sealed class ClientUnits
{
    private readonly ILookup<Guid, WornStretch> stretches;
    private readonly Dictionary<Guid, LifeSpell> lives;
    private readonly HabitBook habits;

    private ClientUnits(
        Guid clientId,
        Guid salonId,
        LocalDate today,
        IReadOnlyList<HairSystem> units,
        IReadOnlyList<LifeSpell> lives,
        ILookup<Guid, WornStretch> stretches,
        HabitBook habits
    )
    {
        (ClientId, SalonId, Today, Units, Lives) = (clientId, salonId, today, units, lives);
        (this.stretches, this.habits) = (stretches, habits);
        this.lives = lives.ToDictionary(l => l.UnitId);
    }

    public Guid ClientId { get; }

    public Guid SalonId { get; }

    public LocalDate Today { get; }

    /// <summary>Of every state; the oldest order first.</summary>
    public IReadOnlyList<HairSystem> Units { get; }

    /// <summary>Those that were ever worn.</summary>
    public IReadOnlyList<LifeSpell> Lives { get; }

    /// <summary>The unit a repeat order copies: the newest that is more than a draft.</summary>
    public HairSystem? Newest => Units.LastOrDefault(u => u.State != UnitState.Specified);

    /// <param name="clients">Whose, with their home salon and its day.</param>
    public static async Task<List<ClientUnits>> LoadAsync(
        ClinicDb db,
        IReadOnlyCollection<(Guid Id, Guid SalonId, LocalDate Today)> clients,
        CancellationToken cancellation
    )
    {
        var ids = clients.Select(c => c.Id).ToList();
        var units = (
            await db
                .HairSystems.AsNoTracking()
                .Include(u => u.Promises)
                .Where(u => u.ClientId != null && ids.Contains(u.ClientId.Value))
                .ToListAsync(cancellation)
        ).ToLookup(u => u.ClientId!.Value);
        var stretches = (
            await db
                .Bonds.Where(b => ids.Contains(b.ClientId))
                .Select(b => new WornStretch(b.HairSystemId, b.AppliedOn, b.RemovedOn))
                .ToListAsync(cancellation)
        ).ToLookup(b => b.UnitId);
        var today = clients.Count == 0 ? default : clients.Max(c => c.Today);
        var lives = (await LifeSpells.ReadAsync(db, today, ids, cancellation)).ToLookup(l => l.ClientId);
        var habits = await HabitBook.LoadAsync(db, ids, cancellation);
        return
        [
            .. clients.Select(c => new ClientUnits(
                c.Id,
                c.SalonId,
                c.Today,
                [.. units[c.Id].OrderBy(u => u.Dates.OrderedOn ?? u.Dates.SpecifiedOn ?? u.Dates.ArrivedOn ?? u.Dates.FirstBondedOn)],
                [.. lives[c.Id]],
                stretches,
                habits
            )),
        ];
    }

    public int WornDays(Guid unitId) => WornStretch.WornBy(stretches[unitId], Today);

    /// <summary>An inspection found it so: from then on it is worn in an emergency only.</summary>
    public bool IsWornOut(Guid unitId) => lives.TryGetValue(unitId, out var life) && life.WornOut;

    /// <param name="unit">Null for one that is still to be made.</param>
    public IReadOnlyList<WearColumn> ColumnsOf(HairSystem? unit, UnitSort sort)
    {
        var since = unit is null ? Today : stretches[unit.Id].Select(s => (LocalDate?)s.From).Min() ?? Today;
        return LifeSpells.ColumnsOf(sort, ClientId, since, habits);
    }

    /// <summary>Something is on the head, or was until not long ago.</summary>
    public bool IsWearing(LocalDate today, int lapsedAfterDays)
    {
        var worn = Units.SelectMany(u => stretches[u.Id]).ToList();
        return worn.Count > 0 && worn.Max(s => s.To ?? today) >= today.PlusDays(-lapsedAfterDays);
    }

    /// <summary>In house and still wearing: the hair there is. What has arrived counts, though it has to be looked at first.</summary>
    public IEnumerable<HairSystem> InHand => Units.Where(u => IsInHand(u.State) && !IsWornOut(u.Id));

    /// <summary>Kept for, or fit only for, an emergency.</summary>
    public IEnumerable<HairSystem> Emergency =>
        Units.Where(u => u.State == UnitState.EmergencySpare || IsInHand(u.State) && IsWornOut(u.Id));

    /// <summary>By unit in hand: how long it lasts, and what it was worn already.</summary>
    public Dictionary<Guid, (LifePrediction Life, int WornDays)> LivesLeft(WearBelief belief, IReadOnlyDictionary<Guid, UnitSort> sorts)
    {
        var nodes = belief.Of(Lives);
        return InHand.ToDictionary(
            u => u.Id,
            u => (belief.Predict(nodes, sorts[u.UnitKindId].Life(), ColumnsOf(u, sorts[u.UnitKindId])), WornDays(u.Id))
        );
    }

    private static bool IsInHand(UnitState state) =>
        state is UnitState.Bonded or UnitState.Arrived or UnitState.Inspected
        || state.IsBondable() && state != UnitState.EmergencySpare;
}
