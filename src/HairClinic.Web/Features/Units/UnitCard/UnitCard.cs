using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Units;

/// <summary>One unit: what it is, whose, where, what it can do next, and everything that happened to it.</summary>
public sealed class UnitCard(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <returns>Null: no such unit, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var found = await (
            from unit in db
                .HairSystems.AsNoTracking()
                .Include(u => u.Promises)
                .Include(u => u.Repairs)
                .Include(u => u.Arrivals)
                .Include(u => u.Steps)
                .AsSplitQuery()
            where unit.Id == unitId
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
            join workshop in db.Workshops on kind.WorkshopId equals workshop.Id into made
            from workshop in made.DefaultIfEmpty()
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from client in owners.DefaultIfEmpty()
            join order in db.WorkshopOrders on unit.OrderId equals order.Id into orders
            from order in orders.DefaultIfEmpty()
            select new
            {
                Unit = unit,
                Kind = kind.Name,
                Base = material.Name,
                Workshop = workshop == null ? null : workshop.Name,
                Owner = client == null ? null : new UnitOwner(client.Id, client.Name, client.Code),
                Order = order == null ? null : new OrderLink(order.Id, order.Number),
            }
        ).SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var unit0 = found.Unit;
        var salon = await UnitSalon.LoadAsync(db, unit0.PlaceSalonId, unit0.ClientId, current.Person, cancellation);
        var bonds = await (
            from bond in db.Bonds.AsNoTracking()
            where bond.HairSystemId == unitId
            join client in db.Clients on bond.ClientId equals client.Id
            orderby bond.AppliedOn
            select new BondRow(bond.AppliedOn, bond.RemovedOn, bond.RemovedBecause, new UnitOwner(client.Id, client.Name, client.Code))
        ).ToListAsync(cancellation);
        var loans = await (
            from loan in db.UnitLoans.AsNoTracking()
            where loan.HairSystemId == unitId
            join client in db.Clients on loan.ClientId equals client.Id
            orderby loan.LentOn
            select new LoanRow(loan, new UnitOwner(client.Id, client.Name, client.Code))
        ).ToListAsync(cancellation);
        var questions = await db
            .UnitQuestions.AsNoTracking()
            .Where(q => q.HairSystemId == unitId)
            .OrderBy(q => q.AskedOn)
            .ToListAsync(cancellation);
        var toCheck = await OpenDateChecks.Query(db, current.Person).Where(c => c.HairSystemId == unitId).ToListAsync(cancellation);
        var names = await db.People.Select(p => new { p.Id, p.Name }).ToDictionaryAsync(p => p.Id, p => p.Name, cancellation);
        var onLoan = loans.Exists(l => l.Loan.IsOpen);
        var role = current.Person.StaffRole;
        var today = salon.DayOf(clock.GetCurrentInstant());
        return new Screen
        {
            Unit = unit0,
            Kind = found.Kind,
            Base = found.Base,
            Workshop = found.Workshop,
            Owner = found.Owner,
            Order = found.Order,
            PlaceName = unit0.PlaceSalonId is null ? null : salon.Name,
            Today = today,
            Zone = salon.TimeZone,
            Bonds = bonds,
            Loans = loans,
            Questions = questions,
            ToCheck =
            [
                .. toCheck.Select(c => new DatesToCheck.Row(c, unitId, unit0.Serial, found.Owner, today)
                {
                    Workshop = found.Workshop,
                    Order = found.Order?.Number,
                    Steps = [],
                }),
            ],
            Steps =
            [
                .. unit0
                    .Steps.OrderByDescending(s => s.RecordedAt)
                    .ThenByDescending(s => s.Kind)
                    .Select(s => new StepRow(s, s.RecordedBy is { } by ? names.GetValueOrDefault(by) : null)
                    {
                        MayCorrect = UnitCorrections.RightOf(current.Person, s, salon).Allows(s, current.Actor.Id, today),
                    }),
            ],
            Next = StaffPermissions.MayBook(role) ? UnitNextSteps.After(unit0.State, unit0.Cleaning, unit0.ClientId is null, onLoan) : [],
            SeesMoney = StaffPermissions.MaySeeMoney(role),
            SeesPhotos = StaffPermissions.MayReadHealth(current.Person),
            MayWrite = StaffPermissions.MayBook(role),
        };
    }

    public sealed record Screen
    {
        public required HairSystem Unit { get; init; }
        public required string Kind { get; init; }
        public required string Base { get; init; }
        public string? Workshop { get; init; }

        /// <summary>Null for the stock.</summary>
        public UnitOwner? Owner { get; init; }

        public OrderLink? Order { get; init; }
        public string? PlaceName { get; init; }
        public required LocalDate Today { get; init; }
        public required DateTimeZone Zone { get; init; }
        public required IReadOnlyList<BondRow> Bonds { get; init; }
        public required IReadOnlyList<LoanRow> Loans { get; init; }
        public required IReadOnlyList<UnitQuestion> Questions { get; init; }

        /// <summary>Its dates that lie far outside what is usual.</summary>
        public required IReadOnlyList<DatesToCheck.Row> ToCheck { get; init; }

        /// <summary>The last one first.</summary>
        public required IReadOnlyList<StepRow> Steps { get; init; }

        /// <summary>What can come next, for whoever may write it; the usual step first.</summary>
        public required IReadOnlyList<UnitStepKind> Next { get; init; }

        public bool SeesMoney { get; init; }

        /// <summary>The photos of its client.</summary>
        public bool SeesPhotos { get; init; }
        public bool MayWrite { get; init; }

        /// <summary>The last step that stands: the one that could be taken back.</summary>
        public StepRow? Last => Steps.FirstOrDefault(s => s.Step.Stands);

        /// <summary>The step whose day a row corrects; null for a step of its own.</summary>
        public UnitStep? Corrected(StepRow row) => Unit.Steps.FirstOrDefault(s => s.Id == row.Step.CorrectsId);
    }

    public sealed record OrderLink(Guid Id, string Number);

    public sealed record BondRow(LocalDate AppliedOn, LocalDate? RemovedOn, RemovalReason? Because, UnitOwner On);

    public sealed record LoanRow(UnitLoan Loan, UnitOwner To);

    public sealed record StepRow(UnitStep Step, string? By)
    {
        /// <summary>Whoever looks may change its date or undo it.</summary>
        public bool MayCorrect { get; init; }
    }
}
