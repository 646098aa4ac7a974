using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Learning;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>The book as the program reads its own: spells with their covariates, and what orders took.</summary>
internal static class BookRows
{
    private static readonly Guid[] Bases = Ids(1);
    private static readonly Guid[] Workshops = Ids(2);
    private static readonly Guid[] Adhesives = Ids(3);

    public static WindowPrior[] HoldWindows { get; } = Array.ConvertAll(PracticeRows.Holds, window => window.In(LifeDistribution.Weibull));

    public static WindowPrior[] LifeWindows { get; } = Array.ConvertAll(PracticeRows.Lives, window => window.In(LifeDistribution.Weibull));

    /// <summary>The kinds of unit: one a base, with the practice's rows.</summary>
    public static UnitKindTerms[] Kinds { get; } =
    [
        .. PracticeRows.Lives.Select(
            (window, i) => new UnitKindTerms(Bases[i], "", Bases[i], null, (int)window.Low, (int)window.High, 56, 77, 0)
        ),
    ];

    public static Guid WorkshopId(int workshop) => Workshops[workshop];

    public static Guid AdhesiveId(int adhesive) => Adhesives[adhesive];

    public static Guid LotId(int lot) => new(lot, 0, 0, [0, 0, 0, 0, 0, 0, 0, 4]);

    /// <summary>Of a workshop, an adhesive or a lot, by its id.</summary>
    public static int NumberOf(Guid id) => BitConverter.ToInt32(id.ToByteArray(), 0);

    /// <param name="lot">Of the adhesive.</param>
    /// <param name="cohorts">Bonds that alarms named.</param>
    public static CovariateValue[] HoldCovariates(ClientBook client, int lot, int day, IReadOnlyList<WatchedCohort> cohorts)
    {
        List<CovariateValue> made =
        [
            CovariateValue.ForBaseMaterial(Bases[client.Base]),
            CovariateValue.Adhesive(Adhesives[client.Adhesive]),
            CovariateValue.Lot(LotId(lot)),
            .. CovariateValue.Season(PracticeRows.DateOf(day)),
        ];
        if (client.Oily > 0)
            made.Add(CovariateValue.For(KnownCovariate.OilySkin, client.Oily));
        foreach (var cohort in cohorts)
        {
            if ((cohort.StreamId == Adhesives[client.Adhesive] || cohort.StreamId == LotId(lot)) && cohort.Names(PracticeRows.DateOf(day)))
                made.Add(CovariateValue.Cohort(cohort.AlarmId));
        }
        return [.. made];
    }

    /// <summary>The client's bonds; one on the head held until its window closes, at most.</summary>
    public static IEnumerable<HoldSpell> Holds(ClientBook client, int today, IReadOnlyList<WatchedCohort> cohorts)
    {
        foreach (var bond in client.Bonds)
        {
            if (bond.Known is { } already && already.Cohorts == cohorts.Count)
            {
                yield return already.Spell;
                continue;
            }
            var known = Math.Min(today - bond.AppliedOn, 7 * PracticeRows.HoldWeeks[client.Base].LatestWeeks);
            var spell = new HoldSpell(
                new Guid(client.Client, (short)bond.AppliedOn, 0, [0, 0, 0, 0, 0, 0, 0, 6]),
                PracticeRows.DateOf(bond.AppliedOn),
                Bases[client.Base],
                Adhesives[client.Adhesive],
                LotId(bond.Lot),
                client.Id,
                Spell.FromHold(bond.Held ?? new HoldObservation(HoldCensoring.AtLeast, known, null)),
                HoldWindows[client.Base],
                HoldCovariates(client, bond.Lot, bond.AppliedOn, cohorts)
            )
            {
                EndedOn = bond.RemovedOn is { } off ? PracticeRows.DateOf(off) : null,
            };
            if (bond.Held is not null)
                bond.Known = (spell, cohorts.Count);
            yield return spell;
        }
    }

    public static LifeSpell Life(ClientBook client, UnitRecord unit, int today, IReadOnlyList<WatchedCohort> cohorts)
    {
        var wear = UnitWear.FromRecords(
            unit.RetiredOn is null ? UnitState.Bonded : UnitState.Retired,
            [
                .. unit.Worn.Select(w => new WornPeriod(
                    Guid.Empty,
                    PracticeRows.DateOf(w.From),
                    w.To is { } to ? PracticeRows.DateOf(to) : null
                )),
            ],
            unit.Looks.Select(look => new UnitInspection(PracticeRows.DateOf(look.Day), look.Grades)),
            unit.RepairedOn.Select(PracticeRows.DateOf),
            PracticeRows.DateOf(today)
        );
        return new LifeSpell(
            unit.Id,
            Kinds[client.Base].Id,
            Bases[client.Base],
            Workshops[client.Workshop],
            wear.WornDays,
            wear.WornOut,
            client.Id,
            wear.Life,
            LifeWindows[client.Base],
            LifeCovariates(client, unit.ArrivedOn, cohorts)
        )
        {
            RepairedAt = wear.RepairedAt,
            Grades = wear.Grades,
            FirstWornOn = PracticeRows.DateOf(unit.Worn[0].From),
            RetiredOn = unit.RetiredOn is { } gone ? PracticeRows.DateOf(gone) : null,
        };
    }

    public static RemakeRate Remakes(IEnumerable<UnitRecord> units)
    {
        var ordered = units.Where(u => u.OrderedOn is not null).ToList();
        return PracticeRows.Remakes.AddOutcomes(ordered.Count(u => u.IsRemade), ordered.Count(u => !u.IsRemade && u.ArrivedOn is not null));
    }

    /// <param name="arrivedOn">Null while it is still to come.</param>
    /// <param name="cohorts">Units that alarms named.</param>
    public static CovariateValue[] LifeCovariates(ClientBook client, int? arrivedOn, IReadOnlyList<WatchedCohort> cohorts)
    {
        List<CovariateValue> made =
        [
            CovariateValue.ForBaseMaterial(Bases[client.Base]),
            CovariateValue.Workshop(Workshops[client.Workshop]),
        ];
        if (client.Heat > 0)
            made.Add(CovariateValue.For(KnownCovariate.DailyHeat, client.Heat));
        foreach (var cohort in cohorts)
        {
            if (cohort.StreamId == Workshops[client.Workshop] && cohort.Names(arrivedOn is { } day ? PracticeRows.DateOf(day) : null))
                made.Add(CovariateValue.Cohort(cohort.AlarmId));
        }
        return [.. made];
    }

    private static Guid[] Ids(byte kind) => [.. Enumerable.Range(0, 2).Select(i => new Guid(i, 0, 0, [0, 0, 0, 0, 0, 0, 0, kind]))];
}
