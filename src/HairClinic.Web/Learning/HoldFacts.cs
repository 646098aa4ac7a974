using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Bonds of some clients or all, and what is needed to read them as spells of hold.</summary>
public sealed class HoldFacts
{
    private readonly IReadOnlyCollection<HoldWindowRule> _rules;
    private readonly CareHabitFacts _habits;
    private readonly ILookup<Guid, BondWithMaterials> _bonds;
    private readonly ILookup<Guid, WatchedCohort> _cohorts;

    private HoldFacts(
        IReadOnlyCollection<HoldWindowRule> rules,
        CareHabitFacts habits,
        IEnumerable<BondWithMaterials> bonds,
        IEnumerable<WatchedCohort> cohorts
    )
    {
        (_rules, _habits, _cohorts) = (rules, habits, cohorts.ToLookup(c => c.StreamId));
        _bonds = bonds.OrderBy(b => b.Bond.AppliedOn).ToLookup(b => b.Bond.ClientId);
    }

    /// <summary>Two round trips, and one more where the cohorts are not known yet.</summary>
    /// <param name="clientIds">Null for every client's.</param>
    /// <param name="cohorts">As <see cref="WatchCohorts.BondAlarms"/> gives them.</param>
    public static async Task<HoldFacts> LoadAsync(
        ClinicDb db,
        IReadOnlyCollection<HoldWindowRule> rules,
        IReadOnlyCollection<Guid>? clientIds,
        CancellationToken cancellation,
        IReadOnlyCollection<WatchedCohort>? cohorts = null
    )
    {
        cohorts ??= await WatchCohorts.BondAlarms(db).Select(WatchCohorts.FromAlarm).ToListAsync(cancellation);
        var asked =
            from bond in db.Bonds
            where clientIds == null || clientIds.Contains(bond.ClientId)
            // A unit may be out of the reader's sight although the bond is not.
            join unit in db.HairSystems on bond.HairSystemId equals unit.Id
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            let glue = (
                from use in db.BondProducts
                join product in db.Products on use.ProductId equals product.Id
                where use.BondId == bond.Id && (product.Kind == ProductKind.Adhesive || product.Kind == ProductKind.Tape)
                orderby use.Id
                select use
            ).FirstOrDefault()
            select new BondWithMaterials(
                bond,
                kind.BaseMaterialId,
                glue == null ? null : (Guid?)glue.ProductId,
                glue == null ? null : glue.LotId
            );
        var bonds = await asked.AsNoTracking().ToListAsync(cancellation);
        return new HoldFacts(rules, await CareHabitFacts.LoadAsync(db, clientIds, cancellation), bonds, cohorts);
    }

    /// <summary>As the records stood at the end of an earlier day. Alarms of the watch are left away: which had been raised by then changes with what is closed since.</summary>
    /// <param name="clientId">Null for every client's.</param>
    public HoldFacts AsOf(LocalDate day, Guid? clientId = null) =>
        new(
            _rules,
            _habits,
            (clientId is { } id ? _bonds[id] : _bonds.SelectMany(own => own))
                .Select(b => b.Bond.AsOf(day) is { } was ? b with { Bond = was } : null)
                .OfType<BondWithMaterials>(),
            []
        );

    /// <param name="today">Bonds on heads held until then at least.</param>
    public IEnumerable<HoldSpell> AllSpells(LocalDate today) => _bonds.SelectMany(own => own).Select(b => SpellOf(b, today));

    /// <summary>The columns that tell enough to be fitted: of lots and seasons not all do.</summary>
    public static Func<string, bool> ColumnsThatTell(IReadOnlyCollection<HoldSpell> spells)
    {
        var lots = spells
            .Where(s => s.LotId is not null && s.Spell.End != SpellEnd.After)
            .CountBy(s => s.LotId!.Value)
            .Where(lot => lot.Value >= HoldSeason.FewestOfLot)
            .Select(lot => CovariateValue.Lot(lot.Key).Name)
            .ToHashSet(StringComparer.Ordinal);
        var seasons = spells.Count > 0 && HoldSeason.CanTell(spells.Min(s => s.AppliedOn), spells.Max(s => s.AppliedOn));
        return name =>
            name.StartsWith(CovariateValue.LotPrefix, StringComparison.Ordinal)
                ? lots.Contains(name)
                : seasons || !name.StartsWith(CovariateValue.SeasonPrefix, StringComparison.Ordinal);
    }

    /// <summary>What a client's bonds had told up to a day.</summary>
    /// <param name="off">The bond that comes off on that day, and how long it held by what was found.</param>
    public List<HoldSpell> SpellsUntil(Guid clientId, LocalDate day, (Guid BondId, HoldObservation Held)? off = null) =>
        [
            .. _bonds[clientId]
                .Where(b => b.Bond.AppliedOn < day || b.Bond.RemovedOn <= day || b.Bond.Id == off?.BondId)
                .Select(b => SpellOf(b, day, b.Bond.Id == off?.BondId ? off.Value.Held : null)),
        ];

    /// <summary>The bond on the client's head, or the last there was.</summary>
    public BondWithMaterials? LastBond(Guid clientId) => _bonds[clientId].LastOrDefault();

    /// <summary>A window's prior; one of no width is taken to spread over its last day.</summary>
    public static WindowPrior NonDegeneratePriorOf(HoldWindow window) =>
        WindowPrior.FromWindow(
            LifeDistribution.Weibull,
            window.EarliestWeeks < window.LatestWeeks ? 7.0 * window.EarliestWeeks : 7.0 * window.LatestWeeks - 1,
            7.0 * window.LatestWeeks
        );

    /// <returns>Null for a row of no width, which is taken at its word.</returns>
    public static WindowPrior? PriorOf(HoldWindowRule rule) =>
        rule.LatestWeeks > rule.EarliestWeeks
            ? WindowPrior.FromWindow(LifeDistribution.Weibull, 7.0 * rule.EarliestWeeks, 7.0 * rule.LatestWeeks)
            : null;

    /// <summary>What bears on a bond's hold: what it is made with, and the client's habits.</summary>
    /// <param name="lotId">Of the adhesive; null where it is not known yet.</param>
    public IReadOnlyList<CovariateValue> CovariatesOf(
        Guid clientId,
        LocalDate appliedOn,
        Guid baseId,
        Guid? adhesiveId,
        bool? waitsKept,
        Guid? lotId = null
    )
    {
        var columns = new List<CovariateValue> { CovariateValue.ForBaseMaterial(baseId) };
        if (adhesiveId is { } adhesive)
            columns.Add(CovariateValue.Adhesive(adhesive));
        if (lotId is { } lot)
            columns.Add(CovariateValue.Lot(lot));
        foreach (var stream in new[] { adhesiveId, lotId }.OfType<Guid>())
            columns.AddRange(_cohorts[stream].Where(c => c.Names(appliedOn)).Select(c => CovariateValue.Cohort(c.AlarmId)));
        columns.AddRange(CovariateValue.Season(appliedOn));
        if (waitsKept == false)
            columns.Add(CovariateValue.For(KnownCovariate.WaitsCut));
        columns.AddRange(_habits.HoldCovariates(clientId, appliedOn));
        return columns;
    }

    private HoldSpell SpellOf(BondWithMaterials made, LocalDate today, HoldObservation? held = null)
    {
        var bond = made.Bond;
        return new HoldSpell(
            bond.Id,
            bond.AppliedOn,
            made.BaseMaterialId,
            made.AdhesiveId,
            made.LotId,
            bond.ClientId,
            Spell.FromHold(held ?? HoldObservation.From(bond, LocalDate.Min(today, bond.KnownUntil))),
            WindowOf(made),
            CovariatesOf(bond.ClientId, bond.AppliedOn, made.BaseMaterialId, made.AdhesiveId, bond.WaitsKept, made.LotId)
        )
        {
            EndedOn = bond.Lift?.LiftedOn ?? bond.RemovedOn ?? bond.Lift?.ReportedOn,
        };
    }

    private WindowPrior? WindowOf(BondWithMaterials made)
    {
        try
        {
            return PriorOf(HoldWindowRule.Choose(_rules, made.BaseMaterialId, made.AdhesiveId, made.Bond.Attachment));
        }
        catch (Refusal)
        {
            // No row fits any more: nothing can be said of how long this one should have held.
            return null;
        }
    }
}

/// <summary>How long one bond held.</summary>
public sealed record HoldSpell(
    Guid BondId,
    LocalDate AppliedOn,
    Guid BaseMaterialId,
    Guid? AdhesiveId,
    Guid? LotId,
    Guid? Client,
    Spell Spell,
    WindowPrior? Window,
    IReadOnlyList<CovariateValue> Columns
) : WearSpell(Client, Spell, Window, Columns)
{
    /// <summary>The day it lifted or came off, as it was written down; null while it goes on.</summary>
    public LocalDate? EndedOn { get; init; }

    public override (DateCheckKind Kind, Guid Id, LocalDate From, LocalDate? Until) Dates =>
        (DateCheckKind.BondHeld, BondId, AppliedOn, EndedOn);
}

/// <summary>A bond with what it was made of: the unit's base, and the adhesive or tape with its lot.</summary>
public sealed record BondWithMaterials(Bond Bond, Guid BaseMaterialId, Guid? AdhesiveId, Guid? LotId);
