using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>An order goes out to a workshop: one drafted unit or several, for one client or several.</summary>
public sealed class PlaceOrder(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    private const int MostDrafts = 500;

    /// <param name="unitId">The draft to begin with.</param>
    /// <param name="clientId">The client whose drafts to begin with.</param>
    public async Task<Screen> OpenAsync(Guid? unitId, Guid? clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var drafts = await (
            from unit in db.HairSystems.AsNoTracking()
            where unit.State == UnitState.Specified
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from client in owners.DefaultIfEmpty()
            where client == null || client.MergedIntoId == null && client.ErasedAt == null
            orderby unit.Serial
            select new Draft(
                unit.Id,
                unit.Serial,
                kind.Name,
                kind.WorkshopId,
                client == null ? null : new UnitOwner(client.Id, client.Name, client.Code),
                unit.PriceMinor,
                unit.Currency,
                unit.OrderNote
            )
        )
            .Take(MostDrafts)
            .ToListAsync(cancellation);
        var chosen = drafts.Where(d => d.Id == unitId || clientId is not null && d.Client?.Id == clientId).ToList();
        var workshops = await db
            .Workshops.Where(w => !w.Retired)
            .OrderBy(w => w.Name)
            .Select(w => new WorkshopChoice(w.Id, w.Name))
            .ToListAsync(cancellation);
        var salon = await UnitSalon.LoadAsync(db, null, chosen.FirstOrDefault()?.Client?.Id, current.Person, cancellation);
        var salons = await UnitSalon.ChoicesAsync(db, current.Person, cancellation);
        var workshop =
            chosen.FirstOrDefault()?.WorkshopId ?? drafts.FirstOrDefault()?.WorkshopId ?? (workshops is [var only] ? only.Id : null);
        return new Screen(
            salon.DayOf(clock.GetCurrentInstant()),
            drafts,
            workshops,
            salons,
            new Input
            {
                WorkshopId = workshop,
                Number = await NumberAsync(db, cancellation),
                SalonId = UnitSalon.Prefer(salons, salon.Id),
                SentOn = salon.DayOf(clock.GetCurrentInstant()),
                Currency = chosen.Select(d => d.Currency).OfType<string>().FirstOrDefault() ?? salon.Currency,
                Lines =
                [
                    .. drafts.Select(d => new Line
                    {
                        UnitId = d.Id,
                        PriceMinor = d.PriceMinor,
                        Chosen = chosen.Contains(d),
                    }),
                ],
            }
        );
    }

    /// <exception cref="Refusal">A unit is no draft any more or another workshop's, a number is taken, or a day cannot be.</exception>
    /// <exception cref="OvertakenException">Someone ordered one of them at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(PlaceOrder), input, db => WriteAsync(db, key, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, WorkshopOrderMap.OneNumber))
        {
            throw new Refusal("There is an order {0} already.", input.Number.Trim()) { Field = nameof(Input.Number) };
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        var lines = input.Lines.Where(l => l.Chosen).ToList();
        var ids = lines.Select(l => l.UnitId).ToList();
        var units = await db.HairSystems.Include(u => u.Promises).Where(u => ids.Contains(u.Id)).ToListAsync(cancellation);
        if (units.Count < ids.Count)
            throw new Refusal("One of these units is not in the book of your salons any more. Open the page again.");
        var owners = units.Select(u => u.ClientId).ToList();
        Client.RequireNeed(await db.Clients.Where(c => owners.Contains(c.Id)).MaxAsync(c => c.LeftOn, cancellation));
        var makers = await db.UnitKinds.ToDictionaryAsync(k => k.Id, k => k.WorkshopId, cancellation);
        if (units.Find(u => makers[u.UnitKindId] is { } maker && maker != input.WorkshopId) is { } other)
            throw new Refusal("Unit {0} is made by another workshop. Leave it out, or choose that workshop.", other.Serial);
        if (!current.Person.Salons.Contains(input.SalonId!.Value))
            throw new Refusal("Say to which salon it comes.") { Field = nameof(Input.SalonId) };
        var salon = await db.Salons.AsNoTracking().SingleAsync(s => s.Id == input.SalonId, cancellation);
        var (now, by) = (clock.GetCurrentInstant(), current.Actor.Id);
        var today = salon.DayOf(now);
        var sentOn = input.SentOn!.Value.RequireReached(today, nameof(Input.SentOn));
        var order = new WorkshopOrder(key, input.Number, input.WorkshopId!.Value, input.SalonId.Value, sentOn, input.Currency);
        order.Send(
            [.. lines.Select(l => (units.Single(u => u.Id == l.UnitId), l.PriceMinor))],
            Guid.CreateVersion7,
            new UnitStepEntry(key, today, now, by)
        );
        db.WorkshopOrders.Add(order);
        if (input.PromisedFor is { } promised)
        {
            order.Promise(Guid.CreateVersion7(), promised, order.SentOn, input.SaidBy, today);
            foreach (var unit in units)
                order.Spread(unit, Guid.CreateVersion7, new UnitStepEntry(key, today, now, by));
        }
        return new Outcome(order.Id, order.Number, units.Count);
    }

    // The next number that is free: somebody may have numbered by hand.
    private static async Task<string> NumberAsync(ClinicDb db, CancellationToken cancellation)
    {
        for (var number = await db.WorkshopOrders.CountAsync(cancellation) + 1; ; number++)
        {
            var text = number.ToString(CultureInfo.InvariantCulture);
            if (!await db.WorkshopOrders.AnyAsync(o => o.Number == text, cancellation))
                return text;
        }
    }

    public sealed record Screen(
        LocalDate Today,
        IReadOnlyList<Draft> Drafts,
        IReadOnlyList<WorkshopChoice> Workshops,
        IReadOnlyList<SalonChoice> Salons,
        Input Start
    );

    /// <param name="WorkshopId">Null where its kind names none: any may make it.</param>
    public sealed record Draft(
        Guid Id,
        string Serial,
        string Kind,
        Guid? WorkshopId,
        UnitOwner? Client,
        long? PriceMinor,
        string? Currency,
        string? Note
    )
    {
        public bool MadeBy(Guid? workshopId) => WorkshopId is null || WorkshopId == workshopId;
    }

    public sealed record WorkshopChoice(Guid Id, string Name);

    public sealed record Input
    {
        public Guid? WorkshopId { get; set; }
        public string Number { get; set; } = "";
        public Guid? SalonId { get; set; }
        public LocalDate? SentOn { get; set; }
        public string Currency { get; set; } = "";
        public LocalDate? PromisedFor { get; set; }
        public string? SaidBy { get; set; }
        public List<Line> Lines { get; set; } = [];
    }

    public sealed record Line
    {
        public Guid UnitId { get; set; }
        public bool Chosen { get; set; }
        public long? PriceMinor { get; set; }
    }

    public sealed record Outcome(Guid OrderId, string Number, int Units);
}

public sealed class PlaceOrderRules : AbstractValidator<PlaceOrder.Input>
{
    public PlaceOrderRules()
    {
        RuleFor(x => x.WorkshopId).NotNull().WithMessage("Choose the workshop.");
        RuleFor(x => x.Number)
            .NotEmpty()
            .WithMessage("Give it a number.")
            .MaximumLength(40)
            .WithMessage("A number has at most 40 letters.");
        RuleFor(x => x.SalonId).NotNull().WithMessage("Say to which salon it comes.");
        RuleFor(x => x.SentOn).NotNull().WithMessage("Choose the day.");
        RuleFor(x => x.SaidBy).MaximumLength(80).WithMessage("A name has at most 80 letters.");
        RuleFor(x => x.PromisedFor)
            .Must((x, day) => day is null || x.SentOn is null || day >= x.SentOn)
            .WithMessage("A promised day does not lie before the order.");
        RuleFor(x => x.Lines).Must(lines => lines.Any(l => l.Chosen)).WithMessage("Choose the units that are ordered.");
        RuleFor(x => x.Lines)
            .Must(lines => lines.Count(l => l.Chosen) <= WorkshopOrder.MostUnits)
            .WithMessage("An order takes 50 units at most.");
        RuleForEach(x => x.Lines)
            .ChildRules(line => line.RuleFor(l => l.PriceMinor).GreaterThanOrEqualTo(0).WithMessage("A price is not below nothing."));
    }
}
