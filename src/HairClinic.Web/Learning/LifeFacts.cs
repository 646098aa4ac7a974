using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Units of some clients or all, what they were worn and how they looked, ready to be read as spells of life.</summary>
public sealed partial class LifeFacts
{
    private readonly ILookup<Guid?, HairSystem> _units;
    private readonly ILookup<Guid, WornPeriod> _stretches;
    private readonly ILookup<Guid, UnitInspection> _looks;
    private readonly CareHabitFacts _habits;
    private readonly ILookup<Guid, BorrowedUnit> _borrowed;
    private readonly HashSet<Guid> _needEnded;
    private readonly HashSet<Guid> _clientLeft;
    private readonly Dictionary<Guid, LocalDate> _askedAbout;
    private readonly ILookup<Guid?, (HairSystem Unit, LocalDate? LeftOn, LocalDate? AskedSince)> _all;
    private readonly ILookup<Guid, BorrowedUnit> _loans;

    private LifeFacts(
        IReadOnlyList<(HairSystem Unit, LocalDate? LeftOn, LocalDate? AskedSince)> all,
        IReadOnlyCollection<BorrowedUnit> borrowed,
        IEnumerable<WornPeriod> stretches,
        IEnumerable<(Guid UnitId, UnitInspection Seen)> looks,
        CareHabitFacts habits
    )
    {
        var units = all.Select(u => u.Unit);
        // Whoever needs none any more gives away what still wears.
        _needEnded = [.. all.Where(u => u.Unit.Dates.RetiredOn >= u.LeftOn).Select(u => u.Unit.Id)];
        _clientLeft = [.. all.Where(u => u.LeftOn is not null).Select(u => u.Unit.Id)];
        _askedAbout = all.Where(u => u.AskedSince is not null).ToDictionary(u => u.Unit.Id, u => u.AskedSince!.Value);
        _units = units.OrderBy(u => u.Dates.OrderedOrFirstKnownOn()).ToLookup(u => u.ClientId);
        _borrowed = borrowed.Where(b => b.Loan.IsOpen).ToLookup(b => b.Loan.ClientId);
        _all = all.ToLookup(u => u.Unit.ClientId);
        _loans = borrowed.ToLookup(b => b.Loan.ClientId);
        _stretches = stretches.ToLookup(s => s.UnitId);
        _looks = looks.OrderBy(l => l.Seen.Day).ToLookup(l => l.UnitId, l => l.Seen);
        _habits = habits;
    }

    /// <summary>Five round trips.</summary>
    /// <param name="clientIds">Null for every unit there is.</param>
    /// <param name="wholePast">Also what is over, as <see cref="AsOf"/> needs it: loans given back, and units' arrivals.</param>
    public static async Task<LifeFacts> LoadAsync(
        ClinicDb db,
        IReadOnlyCollection<Guid>? clientIds,
        CancellationToken cancellation,
        bool wholePast = false
    )
    {
        IQueryable<HairSystem> units = db.HairSystems.AsNoTracking().Include(u => u.Promises).Include(u => u.Repairs);
        if (wholePast)
            units = units.Include(u => u.Arrivals).AsSplitQuery();
        var bonds = db.Bonds.Where(b => clientIds == null || clientIds.Contains(b.ClientId));
        var looks =
            from record in db.VisitRecords
            where record.RemovedUnitId != null
            join visit in db.Visits on record.VisitId equals visit.Id
            where clientIds == null || clientIds.Contains(visit.ClientId)
            select new
            {
                UnitId = record.RemovedUnitId!.Value,
                visit.Day,
                record.Grades,
                record.GradesCopied,
                record.RecordedBy,
                record.WornOutOn,
                record.WornOutSince,
            };
        var waitedFor = OpenDateChecks.OfOrdersWaitedFor(db);
        return new LifeFacts(
            (
                await units
                    .Where(u => clientIds == null || u.ClientId != null && clientIds.Contains(u.ClientId.Value))
                    .Select(u => new
                    {
                        Unit = u,
                        LeftOn = db.Clients.Where(c => c.Id == u.ClientId).Select(c => c.LeftOn).FirstOrDefault(),
                        AskedSince = waitedFor.Where(c => c.HairSystemId == u.Id).Select(c => (LocalDate?)c.From).FirstOrDefault(),
                    })
                    .ToListAsync(cancellation)
            ).ConvertAll(u => (u.Unit, u.LeftOn, u.AskedSince)),
            await db
                .UnitLoans.Where(l => (wholePast || l.BackOn == null) && (clientIds == null || clientIds.Contains(l.ClientId)))
                .Join(db.HairSystems, l => l.HairSystemId, u => u.Id, (l, u) => new BorrowedUnit(u, l))
                .AsNoTracking()
                .ToListAsync(cancellation),
            await bonds.Select(b => new WornPeriod(b.HairSystemId, b.AppliedOn, b.RemovedOn)).ToListAsync(cancellation),
            (await looks.ToListAsync(cancellation)).Select(l =>
                (
                    l.UnitId,
                    new UnitInspection(l.Day, l.Grades)
                    {
                        Copied = l.GradesCopied,
                        Grader = l.RecordedBy,
                        WornOutOn = l.WornOutOn,
                        WornOutSince = l.WornOutSince,
                    }
                )
            ),
            await CareHabitFacts.LoadAsync(db, clientIds, cancellation)
        );
    }

    /// <summary>A client's units of every state, the oldest order first.</summary>
    public IEnumerable<HairSystem> UnitsOf(Guid clientId) => _units[clientId];

    /// <summary>Units of nobody's that the client has now.</summary>
    public IEnumerable<BorrowedUnit> BorrowedBy(Guid clientId) => _borrowed[clientId];

    /// <summary>When a unit was on a head.</summary>
    public IEnumerable<WornPeriod> WornPeriodsOf(Guid unitId) => _stretches[unitId];

    /// <summary>The first day it was on a head; null for one that never was.</summary>
    public LocalDate? FirstWornOn(Guid unitId) => _stretches[unitId].Select(s => (LocalDate?)s.From).Min();

    /// <summary>Whoever has a unit, or had one.</summary>
    public IEnumerable<Guid> Clients => _units.Select(own => own.Key).OfType<Guid>();

    /// <inheritdoc cref="OrderWaitingCheck.MayBeForgotten"/>
    public bool MayBeForgotten(HairSystem unit) =>
        OrderWaitingCheck.MayBeForgotten(unit, _askedAbout.TryGetValue(unit.Id, out var since) ? since : null);

    /// <summary>The first day on which somebody looked and found it worn out.</summary>
    public LocalDate? FoundWornOutOn(Guid unitId) => _looks[unitId].Where(l => l.WornOut == true).Min(l => (LocalDate?)l.Day);

    /// <summary>Its client needs no units any more.</summary>
    public bool HasClientLeft(Guid unitId) => _clientLeft.Contains(unitId);

    /// <summary>Every unit that was ever bonded.</summary>
    public IEnumerable<LifeSpell> Spells(IReadOnlyDictionary<Guid, UnitKindTerms> kinds, LocalDate today) =>
        _units.SelectMany(own => own).Where(u => _stretches.Contains(u.Id)).Select(u => SpellOf(u, kinds[u.UnitKindId], today));

    public IEnumerable<LifeSpell> Spells(Guid clientId, IReadOnlyDictionary<Guid, UnitKindTerms> kinds, LocalDate today) =>
        _units[clientId].Where(u => _stretches.Contains(u.Id)).Select(u => SpellOf(u, kinds[u.UnitKindId], today));

    /// <summary>What bears on a unit's life: its base, who made it, and the client's habits.</summary>
    /// <param name="on">The day it is first worn.</param>
    /// <param name="delivered">The day it came; null where it is still to come.</param>
    public IReadOnlyList<CovariateValue> CovariatesWhenFirstWorn(UnitKindTerms kind, Guid? clientId, LocalDate on, LocalDate? delivered)
    {
        var columns = kind.LifeCovariates(delivered);
        if (clientId is { } client)
            columns.AddRange(_habits.LifeCovariates(client, on));
        return columns;
    }

    /// <summary>What bears on what is left of a unit, or on one that is still to be made.</summary>
    public IReadOnlyList<CovariateValue> CovariatesNow(HairSystem? unit, UnitKindTerms kind, Guid clientId, LocalDate today)
    {
        var worn = unit is null ? null : FirstWornOn(unit.Id);
        return CovariatesWhenFirstWorn(kind, clientId, worn ?? today, unit is null ? null : DeliveredOn(unit));
    }

    /// <summary>The alarm of its workshop that names a unit; null where none does.</summary>
    public WatchedCohort? CohortOf(HairSystem unit, UnitKindTerms kind) => kind.Cohorts.FirstOrDefault(c => c.Names(DeliveredOn(unit)));

    // The day it came; where nobody wrote that down, the day it was first worn.
    private LocalDate? DeliveredOn(HairSystem unit) => unit.Dates.ArrivedOn ?? FirstWornOn(unit.Id);

    private LifeSpell SpellOf(HairSystem unit, UnitKindTerms kind, LocalDate today)
    {
        var own = _stretches[unit.Id].ToList();
        var firstWornOn = own.Min(s => s.From);
        var wear = UnitWear.FromRecords(
            unit.State,
            own,
            _looks[unit.Id],
            unit.Repairs.Select(r => r.DoneOn).OfType<LocalDate>(),
            today,
            _needEnded.Contains(unit.Id),
            unit.InspectionAsRetired()
        );
        return new LifeSpell(
            unit.Id,
            unit.UnitKindId,
            kind.BaseMaterialId,
            kind.WorkshopId,
            wear.WornDays,
            wear.WornOut,
            unit.ClientId,
            wear.Life,
            kind.LifePrior(),
            CovariatesWhenFirstWorn(kind, unit.ClientId, firstWornOn, DeliveredOn(unit))
        )
        {
            RepairedAt = wear.RepairedAt,
            Grades = wear.Grades,
            FirstWornOn = firstWornOn,
            RetiredOn = unit.Dates.RetiredOn,
        };
    }
}

/// <summary>A unit of nobody's that a client has for a time.</summary>
public sealed record BorrowedUnit(HairSystem Unit, UnitLoan Loan);

/// <summary>How long one unit lasted, in worn days.</summary>
public sealed record LifeSpell(
    Guid UnitId,
    Guid UnitKindId,
    Guid BaseMaterialId,
    Guid? WorkshopId,
    int WornDays,
    bool WornOut,
    Guid? Client,
    Spell Spell,
    WindowPrior? Window,
    IReadOnlyList<CovariateValue> Columns
) : WearSpell(Client, Spell, Window, Columns)
{
    public LocalDate FirstWornOn { get; init; }

    public LocalDate? RetiredOn { get; init; }

    public override (DateCheckKind Kind, Guid Id, LocalDate From, LocalDate? Until) Dates =>
        (DateCheckKind.UnitLasted, UnitId, FirstWornOn, RetiredOn);

    /// <summary>Worn days at its first repair; null where it never was repaired.</summary>
    public double? RepairedAt { get; init; }

    /// <summary>How it looked at its take-downs and as it was retired, in order.</summary>
    public IReadOnlyList<GradedLook> Grades { get; init; } = [];

    /// <summary>What its take-downs say of how far it has worn, as far as that is evidence.</summary>
    public UnitGrades StructuralGrades =>
        UnitGrades.FromLooks(
            Grades.Select(g => GradeLook.FromGrades(g.WornDays, g.Grades, g.Copied == true)),
            RepairedAt ?? double.PositiveInfinity
        );

    public override Guid? DudKind => UnitKindId;

    public override Spell SpellAt(double repairRate) => RepairedAt is { } at ? new RepairClock(at, repairRate).Read(Spell) : Spell;
}

/// <summary>Gathers units as spells of life: worn days until an inspection found them worn out.</summary>
public static class LifeSpellBuilder
{
    /// <param name="clientIds">Null for every unit that was ever bonded.</param>
    public static async Task<List<LifeSpell>> LoadAsync(
        ClinicDb db,
        LocalDate today,
        IReadOnlyCollection<Guid>? clientIds,
        CancellationToken cancellation
    ) => [.. (await LifeFacts.LoadAsync(db, clientIds, cancellation)).Spells(await UnitKindsAsync(db, cancellation), today)];

    public static Task<Dictionary<Guid, UnitKindTerms>> UnitKindsAsync(ClinicDb db, CancellationToken cancellation) =>
        (
            from kind in db.UnitKinds
            join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
            select new UnitKindTerms(
                kind.Id,
                kind.Name,
                material.Id,
                kind.WorkshopId,
                material.LifeFromDays,
                material.LifeToDays,
                kind.LeadHalfDays,
                kind.LeadNineInTenDays,
                kind.Spares
            )
            {
                Cohorts = WatchCohorts
                    .Alarms(db)
                    .Where(a => a.Kind == WatchedStreamKind.Workshop && a.StreamId == kind.WorkshopId)
                    .Select(WatchCohorts.FromAlarm)
                    .ToList(),
            }
        ).ToDictionaryAsync(k => k.Id, cancellation);
}

/// <summary>A kind of unit with the practice's rows for its life, its lead time and its spares.</summary>
public sealed record UnitKindTerms(
    Guid Id,
    string Name,
    Guid BaseMaterialId,
    Guid? WorkshopId,
    int LifeFromDays,
    int LifeToDays,
    int LeadHalfDays,
    int LeadNineInTenDays,
    int Spares
)
{
    /// <summary>Units of its workshop that an alarm named.</summary>
    public IReadOnlyList<WatchedCohort> Cohorts { get; init; } = [];

    public WindowPrior LifePrior() => WindowPrior.FromWindow(LifeDistribution.Weibull, LifeFromDays, LifeToDays);

    /// <summary>What bears on the life of any unit of it: its base, and who makes it.</summary>
    /// <param name="delivered">The day it came; null where it is still to come.</param>
    public List<CovariateValue> LifeCovariates(LocalDate? delivered)
    {
        var columns = new List<CovariateValue> { CovariateValue.ForBaseMaterial(BaseMaterialId) };
        if (WorkshopId is { } workshop)
            columns.Add(CovariateValue.Workshop(workshop));
        columns.AddRange(Cohorts.Where(c => c.Names(delivered)).Select(c => CovariateValue.Cohort(c.AlarmId)));
        return columns;
    }

    public LeadTimePrior UsualLeadTime() => new(LeadHalfDays, LeadNineInTenDays);
}
