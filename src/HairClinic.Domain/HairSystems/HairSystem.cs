using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.HairSystems;

/// <summary>One unit with its own serial, from specified to retired.</summary>
[ShapesNextOrder]
public sealed partial class HairSystem : PracticeOwned
{
    private readonly List<PromiseRevision> _promises = [];
    private readonly List<UnitRepair> _repairs = [];
    private readonly List<UnitArrival> _arrivals = [];
    private readonly List<UnitStep> _steps = [];

    private HairSystem() { }

    public HairSystem(Guid id, string serial, Guid? clientId, Guid unitKindId, LocalDate? specifiedOn)
    {
        Id = id;
        Serial = serial.Trim();
        ClientId = clientId;
        UnitKindId = unitKindId;
        Dates = new UnitDates { SpecifiedOn = specifiedOn };
        RemadeTimes = 0;
    }

    public string Serial { get; private set; } = "";

    /// <summary>Whose unit it is; null for stock and loan units.</summary>
    public Guid? ClientId { get; private set; }

    public Guid UnitKindId { get; private set; }
    public UnitState State { get; private set; } = UnitState.Specified;
    public UnitDates Dates { get; private set; } = new();
    public string? RetiredBecause { get; private set; }

    /// <summary>How it came into the book; null where an old book does not say.</summary>
    public UnitOrigin? Origin { get; private set; }

    /// <summary>The workshop's order it is a line of; null for one that came without.</summary>
    public Guid? OrderId { get; private set; }

    /// <summary>Who has it; null where nobody wrote it down, or it is nowhere yet.</summary>
    public UnitPlace? Place { get; private set; }

    /// <summary>The salon that holds it; null while it is at the workshop or with the client.</summary>
    public Guid? PlaceSalonId { get; private set; }

    /// <summary>Where in the salon, such as a drawer.</summary>
    public string? Spot { get; private set; }

    /// <summary>Null where nobody marked it: then it counts as clean.</summary>
    public UnitCleaning? Cleaning { get; private set; }

    /// <summary>The client keeps it at home, to be bonded another day.</summary>
    public bool IsTakenHome => Place == UnitPlace.Client && State.IsBondable();

    /// <summary>It may go on a head today: in house, sound, and clean.</summary>
    public bool IsReady => State.IsBondable() && Cleaning is null or UnitCleaning.Clean;

    /// <summary>Minor units of <see cref="Currency"/>; null where not known.</summary>
    public long? PriceMinor { get; private set; }

    /// <summary>ISO 4217.</summary>
    public string? Currency { get; private set; }

    public IReadOnlyList<PromiseRevision> Promises => _promises;

    public IReadOnlyList<UnitRepair> Repairs => _repairs;

    /// <summary>One for each time it arrived from the workshop.</summary>
    public IReadOnlyList<UnitArrival> Arrivals => _arrivals;

    /// <summary>Its trail, as far as it was read.</summary>
    public IReadOnlyList<UnitStep> Steps => _steps;

    /// <summary>How often it was sent back to be made again; null where an old book does not say.</summary>
    public int? RemadeTimes { get; private set; }

    /// <summary>It failed its inspection and the workshop is remaking it.</summary>
    public bool IsBeingRemade => State == UnitState.Remake || (State.IsInFlight() && RemadeTimes > 0);

    /// <summary>Since when the workshop has it to make: since it was ordered, or sent back to be made again.</summary>
    public LocalDate? WaitingSince =>
        IsBeingRemade
            ? Dates.SentBackOn ?? _promises.MaxBy(p => p.Number)?.SaidOn ?? Dates.InspectedOn ?? Dates.OrderedOn
            : Dates.OrderedOn;

    /// <summary>Whether its order says how long an order takes. A remade unit took two rounds, so it counts for the remake rate, not for lead times.</summary>
    public bool TellsOfLead => Dates.ArrivedOn >= Dates.OrderedOn && RemadeTimes is null or 0;

    /// <summary>The unit a repeat order was copied from.</summary>
    public Guid? RepeatsId { get; private set; }

    /// <summary>What to change or keep compared with the unit it repeats.</summary>
    public string? OrderNote { get; private set; }

    /// <exception cref="Refusal">It was ordered already.</exception>
    public void Order(LocalDate on)
    {
        Require(UnitState.Specified);
        Move(UnitState.Ordered, Dates with { OrderedOn = on });
        PlaceAtWorkshop();
    }

    /// <summary>The workshop promises a date; earlier promises are kept.</summary>
    /// <param name="saidBy">Who at the workshop; null where nobody wrote it down.</param>
    /// <param name="orderPromiseId">The promise of its order it repeats.</param>
    public void AddDeliveryPromise(
        Guid revisionId,
        LocalDate promisedFor,
        LocalDate? saidOn,
        string? saidBy = null,
        Guid? orderPromiseId = null
    ) => _promises.Add(new PromiseRevision(revisionId, Id, _promises.Count + 1, promisedFor, saidOn, saidBy, orderPromiseId));

    public void AcknowledgeOrder(LocalDate on)
    {
        Require(UnitState.Ordered);
        Move(UnitState.Acknowledged, Dates with { AcknowledgedOn = on });
    }

    public void Ship(LocalDate on)
    {
        if (!State.IsInFlight())
            throw NotNow();
        Move(UnitState.Shipped, Dates with { ShippedOn = on });
    }

    public void Arrive(LocalDate on, Guid salonId)
    {
        if (!State.IsInFlight())
            throw NotNow();
        // What was found when it came before is told by its arrivals.
        Move(UnitState.Arrived, Dates with { ArrivedOn = on, InspectedOn = null, AcceptedOn = null });
        PlaceAtSalon(salonId);
    }

    public void Inspect(LocalDate on)
    {
        Require(UnitState.Arrived);
        Move(UnitState.Inspected, Dates with { InspectedOn = on });
    }

    public void Accept(LocalDate on)
    {
        Require(UnitState.Inspected);
        Move(UnitState.Accepted, Dates with { AcceptedOn = on });
    }

    public void SendBackForRemake(Guid revisionId, LocalDate on, LocalDate promisedFor)
    {
        SendBack(on);
        AddDeliveryPromise(revisionId, promisedFor, on);
    }

    /// <summary>The workshop makes it again and has named no day.</summary>
    public void SendBack(LocalDate on)
    {
        Require(UnitState.Inspected);
        Move(
            UnitState.Remake,
            Dates with
            {
                SentBackOn = on,
                AcknowledgedOn = null,
                ShippedOn = null,
                ArrivedOn = null,
                InspectedOn = null,
            }
        );
        RemadeTimes = (RemadeTimes ?? 0) + 1;
        PlaceAtWorkshop();
    }

    /// <summary>A repair does not end the unit's life; the remaining life is predicted with it.</summary>
    /// <exception cref="Refusal">It is not here yet, or gone, or the day lies before it arrived.</exception>
    public void AddRepair(Guid repairId, LocalDate on, RepairKind kind, string? note)
    {
        if (State is UnitState.Away)
            throw NotNow();
        RequireRepairable(on);
        _repairs.Add(new UnitRepair(repairId, Id, on, kind, note));
    }

    /// <summary>A copy as the draft of the next order, to be checked before it goes out.</summary>
    public static HairSystem DraftRepeatOrder(Guid id, string serial, HairSystem last, LocalDate on, string? note)
    {
        var draft = new HairSystem(id, serial, last.ClientId, last.UnitKindId, on)
        {
            RepeatsId = last.Id,
            OrderNote = note.NullIfBlank(),
            Origin = UnitOrigin.ToBeOrdered,
        };
        if (last is { PriceMinor: { } minor, Currency: { } currency })
            draft.SetPrice(minor, currency);
        return draft;
    }

    public void Prepare(LocalDate on)
    {
        Require(UnitState.Accepted);
        Move(UnitState.Prepared, Dates with { PreparedOn = on });
    }

    /// <exception cref="Refusal">The unit is not in house and sound, or is on a head already.</exception>
    public void PutOn(LocalDate on)
    {
        if (!State.IsBondable())
            throw new Refusal("Unit {0} is {1}: it cannot be bonded.", Serial, State);
        Move(UnitState.Bonded, Dates with { FirstBondedOn = Dates.FirstBondedOn ?? on });
        Cleaning = null;
        PlaceWithClient();
    }

    /// <summary>It stays in the salon where it came off, and is to be cleaned before it goes on a head again.</summary>
    /// <param name="salonId">Null where nobody wrote down where.</param>
    public void TakeOff(Guid? salonId = null)
    {
        Require(UnitState.Bonded);
        Move(UnitState.Resting, Dates);
        if (salonId is { } salon)
        {
            PlaceAtSalon(salon);
            Cleaning = UnitCleaning.ToBeCleaned;
        }
    }

    /// <summary>It was logged as bonded by mistake: back to its state before.</summary>
    /// <param name="wasItsFirst">No other bond was ever made with it.</param>
    /// <param name="salonId">Where it was logged: there it is again.</param>
    /// <exception cref="Refusal">It is not on a head.</exception>
    internal void UndoPutOn(bool wasItsFirst, Guid salonId)
    {
        Require(UnitState.Bonded);
        var before =
            Dates.RetiredOn is not null ? UnitState.EmergencySpare
            : !wasItsFirst ? UnitState.Resting
            : Dates.PreparedOn is not null ? UnitState.Prepared
            : UnitState.Accepted;
        Move(before, wasItsFirst ? Dates with { FirstBondedOn = null } : Dates);
        PlaceAtSalon(salonId);
    }

    /// <param name="end">Retired, Lost, Damaged, ReturnedToClient or EmergencySpare.</param>
    /// <exception cref="Refusal">It is on a head, or <paramref name="end"/> is no way to leave service.</exception>
    public void LeaveService(UnitState end, LocalDate on, string because)
    {
        if (State == UnitState.Bonded)
            throw new Refusal("Unit {0} is on a head: log its take-down first.", Serial);
        if (!end.IsGone() && end != UnitState.EmergencySpare)
            throw new Refusal("A unit leaves service as retired, lost, damaged, returned or as an emergency spare.");
        Move(end, Dates with { RetiredOn = on });
        (RetiredBecause, EndLook) = (because, null);
        if (end is UnitState.Lost or UnitState.Cancelled)
            (Place, PlaceSalonId, Spot) = (null, null, null);
        else if (end is UnitState.ReturnedToClient)
            PlaceWithClient();
    }

    public void SetPrice(long minor, string currency)
    {
        PriceMinor = minor;
        Currency = currency;
    }

    public void PlaceAtSalon(Guid salonId, string? spot = null) =>
        (Place, PlaceSalonId, Spot) = (UnitPlace.Salon, salonId, spot.NullIfBlank());

    public void AssignToClient(Guid clientId) => ClientId = clientId;

    /// <summary>Imports state and dates from an old book as they are.</summary>
    /// <param name="remadeTimes">Null where the book does not say.</param>
    /// <exception cref="Refusal">Two steps are dated in the wrong order.</exception>
    public void ImportState(UnitState state, UnitDates dates, string? retiredBecause, int? remadeTimes = null)
    {
        if (dates.FirstDisorder() is var (earlier, later))
            throw new Refusal("Unit {0} was {1} before it was {2}.", Serial, later, earlier);
        RetiredBecause = retiredBecause;
        RemadeTimes = remadeTimes;
        Move(state, dates);
        ImportPlace(PlaceSalonId);
    }

    /// <summary>Who has it follows from its state; the salon counts only of one that is in a salon.</summary>
    /// <param name="salonId">Null where the book does not say.</param>
    public void ImportPlace(Guid? salonId)
    {
        if (State is UnitState.Bonded or UnitState.Lent or UnitState.ReturnedToClient)
            PlaceWithClient();
        else if (State.IsInFlight() || State == UnitState.Away)
            PlaceAtWorkshop();
        else if (State is UnitState.Specified or UnitState.Lost or UnitState.Cancelled)
            (Place, PlaceSalonId, Spot) = (null, null, null);
        else
            (Place, PlaceSalonId) = (salonId is null ? null : UnitPlace.Salon, salonId);
    }

    private void Require(UnitState state)
    {
        if (State != state)
            throw NotNow();
    }

    /// <summary>The step does not follow from where it stands.</summary>
    private Refusal NotNow() =>
        new("Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.", Serial, State);

    private void PlaceAtWorkshop() => (Place, PlaceSalonId, Spot) = (UnitPlace.Workshop, null, null);

    private void PlaceWithClient() => (Place, PlaceSalonId, Spot) = (UnitPlace.Client, null, null);

    /// <exception cref="Refusal">It is not here yet, or gone, or the day lies before it arrived.</exception>
    private void RequireRepairable(LocalDate on)
    {
        if (State is UnitState.Specified || State.IsInFlight() || State.IsGone())
            throw NotNow();
        RequireHere(on);
    }

    private void RequireHere(LocalDate on)
    {
        if (on < (Dates.ArrivedOn ?? Dates.FirstBondedOn))
            throw new Refusal("Unit {0} was not here yet on {1}.", Serial, on) { Field = "On" };
    }

    /// <exception cref="Refusal">A step would lie before the one it follows.</exception>
    private void Move(UnitState state, UnitDates dates)
    {
        if (dates.FirstDisorder() is var (earlier, later) && dates != Dates)
            throw new Refusal("Unit {0}: the day of “{1}” cannot lie before the day of “{2}”.", Serial, later, earlier) { Field = "On" };
        (State, Dates) = (state, dates);
    }
}

/// <summary>Where a unit stands between specified and retired.</summary>
public enum UnitState
{
    Specified,
    Ordered,
    Acknowledged,
    Shipped,
    Arrived,
    Inspected,
    Remake,
    Accepted,
    Prepared,
    Bonded,
    Resting,
    Retired,
    Lost,
    Damaged,
    ReturnedToClient,
    EmergencySpare,

    /// <summary>Out for a repair: no hair in house until it is back.</summary>
    Away,

    /// <summary>Given to a client for a time without being bonded, as a soft cap is.</summary>
    Lent,

    /// <summary>It arrived and was not taken.</summary>
    Refused,

    /// <summary>A draft that was dropped, or an order that was called off.</summary>
    Cancelled,
}

/// <summary>How a unit came into the book.</summary>
public enum UnitOrigin
{
    /// <summary>To be made by a workshop.</summary>
    ToBeOrdered,

    /// <summary>Ready-made, off the shelf.</summary>
    ReadyMade,

    /// <summary>The client bought it elsewhere.</summary>
    BoughtElsewhere,

    /// <summary>Worn before, and taken over from an old book.</summary>
    OldBook,
}

/// <summary>Who has a unit.</summary>
public enum UnitPlace
{
    Salon,
    Workshop,
    Client,
}

/// <summary>Whether a unit that was worn may go on a head again.</summary>
public enum UnitCleaning
{
    ToBeCleaned,
    Drying,
    Clean,
}
