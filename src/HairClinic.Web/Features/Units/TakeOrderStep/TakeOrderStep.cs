using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Units;

/// <summary>What a workshop says of a whole order, and its parcel's arrival.</summary>
public sealed class TakeOrderStep(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <summary>The steps that are taken with a whole order.</summary>
    public static readonly IReadOnlyList<UnitStepKind> Steps =
    [
        UnitStepKind.Acknowledged,
        UnitStepKind.Promised,
        UnitStepKind.Shipped,
        UnitStepKind.Arrived,
    ];

    /// <returns>Null: no such order.</returns>
    public async Task<Screen?> OpenAsync(Guid orderId, UnitStepKind step, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var order = await db.WorkshopOrders.AsNoTracking().SingleOrDefaultAsync(o => o.Id == orderId, cancellation);
        if (order is null)
            return null;
        var salon = await db.Salons.AsNoTracking().SingleAsync(s => s.Id == order.SalonId, cancellation);
        var coming = await db
            .HairSystems.Where(u => u.OrderId == orderId)
            .OrderBy(u => u.Serial)
            .Select(u => new Coming(u.Id, u.Serial, u.State))
            .ToListAsync(cancellation);
        var salons = await UnitSalon.ChoicesAsync(db, current.Person, cancellation);
        var today = salon.DayOf(clock.GetCurrentInstant());
        return new Screen(
            order.Number,
            today,
            [.. coming.Where(c => c.State.IsInFlight())],
            order.UnitCount - coming.Count,
            salons,
            new Input
            {
                OrderId = orderId,
                Step = step,
                On = today,
                Parcel = order.Parcel,
                SalonId = UnitSalon.Prefer(salons, order.SalonId),
                UnitIds = [.. coming.Where(c => c.State.IsInFlight()).Select(c => c.Id)],
            }
        );
    }

    /// <exception cref="Refusal">It was said already, a day cannot be, or a unit is here by now.</exception>
    /// <exception cref="OvertakenException">Someone wrote of this order at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(TakeOrderStep), input, db => WriteAsync(db, key, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, UnitArrivalMap.EachOnce))
        {
            throw new Refusal("Somebody did this a moment ago. Open the order again to see it.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        await WriteLock.LockAsync(db, nameof(TakeOrderStep), input.OrderId, cancellation);
        var order =
            await db.WorkshopOrders.Include(o => o.Promises).SingleOrDefaultAsync(o => o.Id == input.OrderId, cancellation)
            ?? throw new Refusal("This order is not in the book. Open the list again.");
        var salon = await db.Salons.AsNoTracking().SingleAsync(s => s.Id == order.SalonId, cancellation);
        var (now, by) = (clock.GetCurrentInstant(), current.Actor.Id);
        var (today, on) = (salon.DayOf(now), input.On!.Value);
        if (input.Step == UnitStepKind.Arrived)
            return await ReceiveAsync(db, order, input, new UnitStepEntry(key, today, now, by), cancellation);
        switch (input.Step)
        {
            case UnitStepKind.Acknowledged:
                order.Acknowledge(on, today);
                break;
            case UnitStepKind.Promised:
                order.Promise(key, input.PromisedFor!.Value, on, input.SaidBy, today);
                break;
            case UnitStepKind.Shipped:
                order.Ship(on, input.Parcel, today);
                break;
            default:
                throw new Refusal("This is not done here. Open the unit, and look what comes next.");
        }
        // Also a promise, which writes nothing of the order's own, is written once at a time.
        db.Entry(order).Property(o => o.UnitCount).IsModified = true;
        var lines = await OrderLines.SpreadAsync(db, order, today, now, by, cancellation);
        OrderLines.SpreadToOthers(db, order, lines.Count, now, by);
        return new Outcome(order.Number, lines.Count);
    }

    private async Task<Outcome> ReceiveAsync(
        ClinicDb db,
        WorkshopOrder order,
        Input input,
        UnitStepEntry entry,
        CancellationToken cancellation
    )
    {
        if (!current.Person.Salons.Contains(input.SalonId!.Value))
            throw new Refusal("Say in which salon it is.") { Field = nameof(Input.SalonId) };
        var claim = await db.Workshops.Where(w => w.Id == order.WorkshopId).Select(w => (int?)w.ClaimDays).SingleAsync(cancellation);
        var units = await db
            .HairSystems.Include(u => u.Promises)
            .Include(u => u.Arrivals)
            .Where(u => u.OrderId == order.Id && input.UnitIds.Contains(u.Id))
            .OrderBy(u => u.Serial)
            .ToListAsync(cancellation);
        if (units.Count == 0)
            throw new Refusal("Choose the units that arrived.");
        foreach (var unit in units)
            unit.Receive(input.On!.Value, input.SalonId.Value, damaged: false, null, claim, entry with { Id = Guid.CreateVersion7() });
        await OrderDateChecker.AskAsync(db, units, entry.Today, cancellation);
        return new Outcome(order.Number, units.Count);
    }

    /// <param name="Coming">Its units that are not here yet, as far as they are seen.</param>
    /// <param name="Unseen">Units of other salons' clients.</param>
    public sealed record Screen(
        string Number,
        LocalDate Today,
        IReadOnlyList<Coming> Coming,
        int Unseen,
        IReadOnlyList<SalonChoice> Salons,
        Input Start
    );

    public sealed record Coming(Guid Id, string Serial, UnitState State);

    public sealed record Input
    {
        public Guid OrderId { get; set; }
        public UnitStepKind Step { get; set; }
        public LocalDate? On { get; set; }
        public LocalDate? PromisedFor { get; set; }
        public string? SaidBy { get; set; }
        public string? Parcel { get; set; }
        public Guid? SalonId { get; set; }

        /// <summary>Those that arrived.</summary>
        public List<Guid> UnitIds { get; set; } = [];
    }

    public sealed record Outcome(string Number, int Units);
}

public sealed class TakeOrderStepRules : AbstractValidator<TakeOrderStep.Input>
{
    public TakeOrderStepRules()
    {
        RuleFor(x => x.On).NotNull().WithMessage("Choose the day.");
        RuleFor(x => x.PromisedFor).NotNull().When(x => x.Step == UnitStepKind.Promised).WithMessage("Choose the day that was promised.");
        RuleFor(x => x.SaidBy).MaximumLength(80).WithMessage("A name has at most 80 letters.");
        RuleFor(x => x.Parcel).MaximumLength(80).WithMessage("A parcel’s number has at most 80 letters.");
        When(
            x => x.Step == UnitStepKind.Arrived,
            () =>
            {
                RuleFor(x => x.SalonId).NotNull().WithMessage("Say in which salon it is.");
                RuleFor(x => x.UnitIds).NotEmpty().WithMessage("Choose the units that arrived.");
            }
        );
    }
}
