using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Units;

/// <summary>Dates far outside what is usual: somebody says whether they are right. Until then nothing is learnt from them.</summary>
public sealed class DatesToCheck(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    public const int Most = 50;

    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var now = clock.GetCurrentInstant();
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var mine = current.Person.AtSalon ?? current.Person.Salons[0];
        var open = OpenDateChecks.Query(db, current.Person);
        var found = await (
            from check in open
            join bond in db.Bonds on check.BondId equals bond.Id into bonds
            from bond in bonds.DefaultIfEmpty()
            join unit in db.HairSystems on check.HairSystemId ?? bond.HairSystemId equals unit.Id into units
            from unit in units.DefaultIfEmpty()
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id into kinds
            from kind in kinds.DefaultIfEmpty()
            join client in db.Clients on bond.ClientId equals client.Id into wearers
            from wearer in wearers.DefaultIfEmpty()
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from owner in owners.DefaultIfEmpty()
            // What is not counted on comes first.
            orderby check.Kind == DateCheckKind.OrderWaiting descending, check.AskedOn, check.Id
            select new
            {
                Check = check,
                UnitId = (Guid?)unit.Id,
                unit.Serial,
                Workshop = db.Workshops.Where(w => w.Id == (check.WorkshopId ?? kind.WorkshopId)).Select(w => w.Name).FirstOrDefault(),
                Order = db.WorkshopOrders.Where(o => o.Id == unit.OrderId).Select(o => o.Number).FirstOrDefault(),
                VisitId = (Guid?)bond.VisitId,
                Client = wearer != null ? new UnitOwner(wearer.Id, wearer.Name, wearer.Code)
                : owner != null ? new UnitOwner(owner.Id, owner.Name, owner.Code)
                : null,
                SalonId = (Guid?)wearer.HomeSalonId ?? (Guid?)owner.HomeSalonId ?? unit.PlaceSalonId,
            }
        )
            .Take(Most)
            .ToListAsync(cancellation);
        var ids = found.Where(f => f.Check.HairSystemId is not null).Select(f => f.Check.HairSystemId!.Value).ToList();
        var steps = (
            await db
                .UnitSteps.AsNoTracking()
                .Where(s =>
                    ids.Contains(s.HairSystemId)
                    && s.TakenBackAt == null
                    && (s.Kind == UnitStepKind.Ordered || s.Kind == UnitStepKind.Arrived || s.Kind == UnitStepKind.SentBack)
                )
                .OrderBy(s => s.RecordedAt)
                .Select(s => new StepLink(s.HairSystemId, s.Id, s.Kind))
                .ToListAsync(cancellation)
        ).ToLookup(s => s.UnitId);
        return new Screen(
            [
                .. found.Select(f => new Row(f.Check, f.UnitId, f.Serial, f.Client, salons[f.SalonId ?? mine].DayOf(now))
                {
                    Workshop = f.Workshop,
                    Order = f.Order,
                    VisitId = f.VisitId,
                    // Of a unit that was made again the last round is the one that counts.
                    Steps = [.. steps[f.UnitId ?? Guid.Empty].GroupBy(s => s.Kind).Select(g => g.Last())],
                }),
            ],
            found.Count < Most ? found.Count : await open.CountAsync(cancellation)
        );
    }

    /// <exception cref="Refusal">It is not there any more, somebody answered it, or that is no answer to it.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(DatesToCheck), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var check =
            await db.DateChecks.SingleOrDefaultAsync(c => c.Id == input.CheckId && c.WorkshopId == null, cancellation)
            ?? throw new Refusal("This is not asked any more. Open the list again.");
        if (check.Kind == DateCheckKind.OrderWaiting && input.Answer == DateCheckAnswer.Wrong)
            throw new Refusal("Say that it arrived, or that it was called off.");
        var unit = await db
            .HairSystems.AsNoTracking()
            .Where(u => u.Id == check.HairSystemId)
            .Select(u => new { u.PlaceSalonId, u.ClientId })
            .SingleOrDefaultAsync(cancellation);
        var salon = await UnitSalon.LoadAsync(db, unit?.PlaceSalonId, unit?.ClientId, current.Person, cancellation);
        var now = clock.GetCurrentInstant();
        check.SetAnswer(input.Answer, current.Actor.Id, now, salon.DayOf(now));
        // An order that is on its way after all is counted on from now; what else was asked counts from the next night's run.
        if (check.Kind == DateCheckKind.OrderWaiting && unit?.ClientId is { } client)
            db.WorkItems.Add(WorkItemFactory.PlanOrders([client], now));
        return new Outcome(check.Kind, input.Answer);
    }

    public sealed record Screen(IReadOnlyList<Row> Rows, int All);

    /// <param name="Client">Who wears or gets it; null for the stock.</param>
    /// <param name="Today">Their salon's day.</param>
    public sealed record Row(DateCheck Check, Guid? UnitId, string? Serial, UnitOwner? Client, LocalDate Today)
    {
        public string? Workshop { get; init; }

        /// <summary>The order's number; null where the book does not say.</summary>
        public string? Order { get; init; }

        /// <summary>The visit that made the bond; null where an old book has it.</summary>
        public Guid? VisitId { get; init; }

        /// <summary>The entries whose dates can be corrected.</summary>
        public required IReadOnlyList<StepLink> Steps { get; init; }

        /// <summary>How long it has been on its way, or took, in days of the calendar.</summary>
        public int CalendarDays => Period.DaysBetween(Check.From, Check.Until ?? Today);
    }

    public sealed record StepLink(Guid UnitId, Guid StepId, UnitStepKind Kind);

    public sealed record Input(Guid CheckId, DateCheckAnswer Answer);

    public sealed record Outcome(DateCheckKind Kind, DateCheckAnswer Answer);
}

public sealed class DatesToCheckRules : AbstractValidator<DatesToCheck.Input>
{
    public DatesToCheckRules()
    {
        RuleFor(x => x.CheckId).NotEmpty();
        RuleFor(x => x.Answer).IsInEnum();
    }
}
