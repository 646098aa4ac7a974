using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Orders;

/// <summary>
/// What was sent to a workshop on one day: one unit or several, for one client or several. It says nothing of whose they are: its lines
/// are units, and each is reached as its client is.
/// </summary>
public sealed class WorkshopOrder : PracticeOwned
{
    /// <summary>Units an order takes.</summary>
    public const int MostUnits = 50;

    private readonly List<OrderPromise> _promises = [];

    private WorkshopOrder() { }

    /// <param name="salonId">Where the parcel goes.</param>
    /// <param name="currency">ISO 4217, of all its prices; null where none is known.</param>
    public WorkshopOrder(Guid id, string number, Guid workshopId, Guid salonId, LocalDate sentOn, string? currency)
    {
        (Id, Number, WorkshopId, SalonId, SentOn) = (id, number.Trim(), workshopId, salonId, sentOn);
        Currency = currency.NullIfBlank();
    }

    /// <summary>The practice's own, unique in it.</summary>
    public string Number { get; private set; } = "";

    public Guid WorkshopId { get; private set; }

    public Guid SalonId { get; private set; }
    public LocalDate SentOn { get; private set; }
    public LocalDate? AcknowledgedOn { get; private set; }
    public LocalDate? ShippedOn { get; private set; }

    public string? Currency { get; private set; }

    /// <summary>How many units it has, for whoever may not see them.</summary>
    public int UnitCount { get; private set; }

    /// <summary>The carrier's number of its parcel.</summary>
    public string? Parcel { get; private set; }

    /// <summary>Every day that was promised for the whole, first to last.</summary>
    public IReadOnlyList<OrderPromise> Promises => _promises;

    /// <summary>Sends the units.</summary>
    /// <param name="lines">Each with its price in minor units of the order's currency, where it is known.</param>
    /// <param name="newId">Makes an id for each step.</param>
    /// <exception cref="Refusal">None or too many, one that is no draft, of another currency, or a day that cannot be.</exception>
    public void Send(IReadOnlyList<(HairSystem Unit, long? PriceMinor)> lines, Func<Guid> newId, UnitStepEntry entry)
    {
        if (lines.Count == 0)
            throw new Refusal("Choose the units that are ordered.");
        if (lines.Count > MostUnits)
            throw new Refusal("An order takes {0} units at most.", MostUnits);
        foreach (var (unit, price) in lines)
        {
            if (unit.Currency is { } other && unit.PriceMinor is not null && price is null && Currency is not null && other != Currency)
                throw new Refusal("The price of {0} is in {1}, and the order is in {2}.", unit.Serial, other, Currency);
            unit.OrderBy(Id, SentOn, entry with { Id = newId() });
            if (price is { } minor)
                unit.SetPrice(minor, Currency ?? throw new Refusal("Say in which currency the prices are.") { Field = "Currency" });
        }
        UnitCount = lines.Count;
    }

    /// <summary>One was on it by mistake.</summary>
    public void DropUnit() => UnitCount--;

    /// <exception cref="Refusal">It is said before the order went out, or in the future.</exception>
    public void Promise(Guid id, LocalDate promisedFor, LocalDate saidOn, string? saidBy, LocalDate today)
    {
        RequireDay(saidOn, today);
        if (promisedFor < saidOn)
            throw new Refusal("A day that was promised on {0} cannot lie before it.", saidOn) { Field = "PromisedFor" };
        _promises.Add(new OrderPromise(id, Id, _promises.Count + 1, promisedFor, saidOn, saidBy));
    }

    /// <exception cref="Refusal">It was acknowledged already, or the day cannot be.</exception>
    public void Acknowledge(LocalDate on, LocalDate today)
    {
        RequireDay(on, today);
        if (AcknowledgedOn is { } day)
            throw new Refusal("Order {0} was confirmed on {1} already.", Number, day);
        AcknowledgedOn = on;
    }

    /// <exception cref="Refusal">It was shipped already, or the day cannot be.</exception>
    public void Ship(LocalDate on, string? parcel, LocalDate today)
    {
        RequireDay(on, today);
        if (ShippedOn is { } day)
            throw new Refusal("Order {0} was sent on {1} already.", Number, day);
        if (on < AcknowledgedOn)
            throw new Refusal("Order {0} was confirmed on {1}: it cannot be sent before.", Number, AcknowledgedOn) { Field = "On" };
        (ShippedOn, Parcel) = (on, parcel.NullIfBlank());
    }

    public void SetParcel(string? parcel) => Parcel = parcel.NullIfBlank();

    /// <summary>Writes on a line what was said of the whole and is not on it yet. A line that went on by itself is left alone.</summary>
    /// <returns>Whether anything was written.</returns>
    public bool Spread(HairSystem line, Func<Guid> newId, UnitStepEntry entry)
    {
        if (line.OrderId != Id || line.IsBeingRemade || !line.State.IsInFlight())
            return false;
        var before = line.Steps.Count;
        if (AcknowledgedOn is { } acknowledged && line.State == UnitState.Ordered)
            line.NoteAcknowledgement(acknowledged, entry with { Id = newId() });
        foreach (var promise in _promises.OrderBy(p => p.Number).Where(p => line.Promises.All(own => own.OrderPromiseId != p.Id)).ToList())
            line.NotePromise(promise.SaidOn, promise.PromisedFor, promise.SaidBy, promise.Id, entry with { Id = newId() });
        if (ShippedOn is { } shipped && line.State != UnitState.Shipped)
            line.NoteShipping(shipped, entry with { Id = newId() });
        return line.Steps.Count > before;
    }

    /// <summary>
    /// The day the order itself has for a step of its lines; null where it says nothing of such a step, or of that promise.
    /// </summary>
    public LocalDate? DayOf(UnitStepKind kind, Guid? orderPromiseId) =>
        kind switch
        {
            UnitStepKind.Ordered => SentOn,
            UnitStepKind.Acknowledged => AcknowledgedOn,
            UnitStepKind.Shipped => ShippedOn,
            UnitStepKind.Promised => _promises.Find(p => p.Id == orderPromiseId)?.SaidOn,
            _ => null,
        };

    /// <summary>The day of one of its own steps was written wrong. Its lines are corrected each for itself.</summary>
    /// <exception cref="Refusal">Its steps would change places.</exception>
    public void CorrectDay(UnitStepKind kind, Guid? orderPromiseId, LocalDate on, LocalDate today)
    {
        on.RequireReached(today);
        var sent = kind == UnitStepKind.Ordered ? on : SentOn;
        var acknowledged = kind == UnitStepKind.Acknowledged ? on : AcknowledgedOn;
        var shipped = kind == UnitStepKind.Shipped ? on : ShippedOn;
        var promise = kind == UnitStepKind.Promised ? _promises.Find(p => p.Id == orderPromiseId) : null;
        LocalDate?[] later = [acknowledged, shipped, .. _promises.Select(p => (LocalDate?)(p == promise ? on : p.SaidOn))];
        if (later.Any(day => day < sent))
            throw new Refusal("Order {0} went out on {1}: choose that day or later.", Number, sent) { Field = "On" };
        if (shipped < acknowledged)
            throw new Refusal("Order {0} was confirmed on {1}: it cannot be sent before.", Number, acknowledged) { Field = "On" };
        promise?.CorrectSaidOn(on);
        (SentOn, AcknowledgedOn, ShippedOn) = (sent, acknowledged, shipped);
    }

    private void RequireDay(LocalDate on, LocalDate today)
    {
        on.RequireReached(today);
        if (on < SentOn)
            throw new Refusal("Order {0} went out on {1}: choose that day or later.", Number, SentOn) { Field = "On" };
    }
}

/// <summary>A day the workshop promised for an order.</summary>
public sealed class OrderPromise : PracticeOwned
{
    private OrderPromise() { }

    internal OrderPromise(Guid id, Guid orderId, int number, LocalDate promisedFor, LocalDate saidOn, string? saidBy) =>
        (Id, WorkshopOrderId, Number, PromisedFor, SaidOn, SaidBy) = (id, orderId, number, promisedFor, saidOn, saidBy.NullIfBlank());

    public Guid WorkshopOrderId { get; private set; }

    /// <summary>1 for the first promise.</summary>
    public int Number { get; private set; }

    public LocalDate PromisedFor { get; private set; }
    public LocalDate SaidOn { get; private set; }

    /// <exception cref="Refusal">The day that was promised lies before it.</exception>
    internal void CorrectSaidOn(LocalDate on) =>
        SaidOn = on <= PromisedFor ? on : throw new Refusal("A day that was promised on {0} cannot lie before it.", on) { Field = "On" };

    /// <summary>Who at the workshop said it.</summary>
    public string? SaidBy { get; private set; }
}
