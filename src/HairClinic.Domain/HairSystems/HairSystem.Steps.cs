namespace HairClinic.Domain.HairSystems;

// Every step a person writes goes through one door: no day in the future, none before the step it follows, nothing changed by a
// refusal, and a line in the trail.
public sealed partial class HairSystem
{
    /// <summary>A unit as it comes into the book, at the place where it is.</summary>
    /// <param name="hereSince">For one that is here; of one that was worn before: since when it was worn.</param>
    /// <param name="salonId">For one that is here.</param>
    /// <exception cref="Refusal">It is here, and nobody said since when and in which salon; or that day has not come.</exception>
    public static HairSystem AddToBook(
        Guid id,
        string serial,
        Guid? clientId,
        Guid unitKindId,
        UnitOrigin origin,
        LocalDate today,
        LocalDate? hereSince,
        Guid? salonId
    )
    {
        var unit = new HairSystem(id, serial, clientId, unitKindId, origin == UnitOrigin.ToBeOrdered ? today : null) { Origin = origin };
        if (origin == UnitOrigin.ToBeOrdered)
            return unit;
        var since = hereSince ?? throw new Refusal("Say since when it is here.") { Field = "HereSince" };
        since.RequireReached(today, "HereSince");
        var dates = new UnitDates { ArrivedOn = since, AcceptedOn = since };
        unit.Move(
            origin == UnitOrigin.OldBook ? UnitState.Resting : UnitState.Accepted,
            origin == UnitOrigin.OldBook ? dates with { FirstBondedOn = since } : dates
        );
        unit.PlaceAtSalon(salonId ?? throw new Refusal("Say in which salon it is.") { Field = "SalonId" });
        return unit;
    }

    /// <summary>It becomes a line of an order that is sent on that day.</summary>
    internal UnitStep OrderBy(Guid orderId, LocalDate on, UnitStepEntry entry) =>
        Step(
            UnitStepKind.Ordered,
            on,
            entry,
            () =>
            {
                Order(on);
                OrderId = orderId;
            }
        );

    /// <exception cref="Refusal">It is not at the workshop, or the promise lies before its order.</exception>
    public UnitStep NotePromise(LocalDate on, LocalDate promisedFor, string? saidBy, Guid? orderPromiseId, UnitStepEntry entry) =>
        Step(
            UnitStepKind.Promised,
            on,
            entry,
            () =>
            {
                if (!State.IsInFlight())
                    throw NotNow();
                if (on < Dates.SentBackOn)
                    throw new Refusal("It was sent back on {0}: nothing can be promised before that.", Dates.SentBackOn) { Field = "On" };
                if (on < Dates.OrderedOn)
                    throw new Refusal("It was ordered on {0}: nothing can be promised before that.", Dates.OrderedOn) { Field = "On" };
                if (_promises.MaxBy(p => p.Number) is { } last && (last.PromisedFor, last.SaidOn) == (promisedFor, on))
                    throw new Refusal("That day was promised already.") { Field = "PromisedFor" };
                AddDeliveryPromise(entry.Id, promisedFor, on, saidBy, orderPromiseId);
            }
        );

    public UnitStep NoteAcknowledgement(LocalDate on, UnitStepEntry entry) =>
        Step(UnitStepKind.Acknowledged, on, entry, () => AcknowledgeOrder(on));

    public UnitStep NoteShipping(LocalDate on, UnitStepEntry entry) => Step(UnitStepKind.Shipped, on, entry, () => Ship(on));

    /// <param name="claimDays">For how many days its workshop takes a claim; null where none is known.</param>
    public UnitStep Receive(LocalDate on, Guid salonId, bool damaged, string? condition, int? claimDays, UnitStepEntry entry) =>
        Step(
            UnitStepKind.Arrived,
            on,
            entry,
            () =>
            {
                if (damaged && string.IsNullOrWhiteSpace(condition))
                    throw new Refusal("Write what is damaged.") { Field = "Condition" };
                Arrive(on, salonId);
                _arrivals.Add(new UnitArrival(entry.Id, Id, _arrivals.Count + 1, on, damaged, condition, claimDays));
            }
        );

    /// <summary>Holds an arrival against its order and does what was decided.</summary>
    /// <param name="remakePromisedFor">Of a remake the day the workshop names, where it names one.</param>
    /// <exception cref="Refusal">It has not arrived.</exception>
    public UnitStep InspectArrival(LocalDate on, ArrivalFindings found, LocalDate? remakePromisedFor, UnitStepEntry entry) =>
        Step(
            found.Decision switch
            {
                ArrivalDecision.Remake => UnitStepKind.SentBack,
                ArrivalDecision.Refused => UnitStepKind.Refused,
                _ => UnitStepKind.Accepted,
            },
            on,
            entry,
            () =>
            {
                if (State == UnitState.Arrived)
                    Inspect(on);
                Require(UnitState.Inspected);
                CurrentArrival?.Inspect(on, found);
                switch (found.Decision)
                {
                    case ArrivalDecision.Remake:
                        SendBack(on);
                        if (remakePromisedFor is { } day)
                            AddDeliveryPromise(entry.Id, day, on);
                        break;
                    case ArrivalDecision.Refused:
                        Move(UnitState.Refused, Dates with { RetiredOn = on });
                        RetiredBecause = found.Note.NullIfBlank();
                        PlaceAtWorkshop();
                        break;
                    default:
                        Accept(on);
                        break;
                }
            }
        );

    /// <summary>The arrival that is being inspected, or was last; null where it came before arrivals were kept.</summary>
    public UnitArrival? CurrentArrival => _arrivals.MaxBy(a => a.Number);

    private UnitStep Step(UnitStepKind kind, LocalDate on, UnitStepEntry entry, Action change)
    {
        on.RequireReached(entry.Today);
        if (on < entry.LastOffOn)
            throw new Refusal("Unit {0} was on a head until {1}: choose that day or later.", Serial, entry.LastOffOn) { Field = "On" };
        var before = Snapshot();
        var (promises, arrivals, repairs) = (_promises.Count, _arrivals.Count, _repairs.Count);
        try
        {
            change();
        }
        catch (Refusal)
        {
            Restore(before);
            _promises.RemoveRange(promises, _promises.Count - promises);
            _arrivals.RemoveRange(arrivals, _arrivals.Count - arrivals);
            _repairs.RemoveRange(repairs, _repairs.Count - repairs);
            throw;
        }
        var step = new UnitStep(entry, kind, on, Id, before, Snapshot());
        _steps.Add(step);
        return step;
    }
}
