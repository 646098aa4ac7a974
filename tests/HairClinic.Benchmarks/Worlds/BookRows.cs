using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
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

    public static CovariateValue[] HoldCovariates(ClientBook client)
    {
        CovariateValue[] made = [CovariateValue.ForBaseMaterial(Bases[client.Base]), CovariateValue.Adhesive(Adhesives[client.Adhesive])];
        return client.Oily > 0 ? [.. made, CovariateValue.For(KnownCovariate.OilySkin, client.Oily)] : made;
    }

    /// <param name="unit">Null for one that is still to be made.</param>
    public static CovariateValue[] LifeCovariates(ClientBook client, UnitRecord? unit = null)
    {
        var columns = LifeCovariatesAtFirst(client);
        return unit?.RepairedOn.Count > 0 ? [.. columns, CovariateValue.For(KnownCovariate.Repaired)] : columns;
    }

    /// <summary>The client's bonds; one on the head held until its window closes, at most.</summary>
    public static IEnumerable<HoldSpell> Holds(ClientBook client, int today)
    {
        var columns = HoldCovariates(client);
        foreach (var bond in client.Bonds)
        {
            var known = Math.Min(today - bond.AppliedOn, 7 * PracticeRows.HoldWeeks[client.Base].LatestWeeks);
            yield return new HoldSpell(
                Guid.Empty,
                PracticeRows.DateOf(bond.AppliedOn),
                Bases[client.Base],
                Adhesives[client.Adhesive],
                new Guid(bond.Lot, 0, 0, [0, 0, 0, 0, 0, 0, 0, 4]),
                client.Id,
                Spell.FromHold(bond.Held ?? new HoldObservation(HoldCensoring.AtLeast, known, null)),
                HoldWindows[client.Base],
                columns
            );
        }
    }

    public static LifeSpell Life(ClientBook client, UnitRecord unit, int today)
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
            unit.Looks.Select(look => (PracticeRows.DateOf(look.Day), look.Grades.WorstStructural)),
            unit.RepairedOn.Select(PracticeRows.DateOf),
            PracticeRows.DateOf(today)
        );
        return new LifeSpell(
            Guid.Empty,
            Guid.Empty,
            Bases[client.Base],
            Workshops[client.Workshop],
            wear.WornDays,
            wear.WornOut,
            client.Id,
            wear.Life,
            LifeWindows[client.Base],
            LifeCovariatesAtFirst(client)
        )
        {
            Stretches = wear.Stretches,
        };
    }

    /// <summary>The lead time of one base from one workshop, as of a day.</summary>
    public static LeadTime Lead(IEnumerable<UnitRecord> units, LeadTimePrior row, int today)
    {
        var ordered = units.Where(u => u.OrderedOn is not null && !u.IsRemade).ToList();
        return LeadTime.Learn(
            row,
            [
                .. ordered
                    .Where(u => u.ArrivedOn is not null)
                    .OrderBy(u => u.ArrivedOn)
                    .Select(u => (double)(u.ArrivedOn!.Value - u.OrderedOn!.Value))
                    .TakeLast(StoredLead.Most),
            ],
            [.. ordered.Where(u => u.IsInFlight).Select(u => (double)(today - u.OrderedOn!.Value))]
        );
    }

    public static RemakeRate Remakes(IEnumerable<UnitRecord> units)
    {
        var ordered = units.Where(u => u.OrderedOn is not null).ToList();
        return PracticeRows.Remakes.AddOutcomes(ordered.Count(u => u.IsRemade), ordered.Count(u => !u.IsRemade && u.ArrivedOn is not null));
    }

    private static CovariateValue[] LifeCovariatesAtFirst(ClientBook client)
    {
        CovariateValue[] made = [CovariateValue.ForBaseMaterial(Bases[client.Base]), CovariateValue.Workshop(Workshops[client.Workshop])];
        return client.Heat > 0 ? [.. made, CovariateValue.For(KnownCovariate.DailyHeat, client.Heat)] : made;
    }

    private static Guid[] Ids(byte kind) => [.. Enumerable.Range(0, 2).Select(i => new Guid(i, 0, 0, [0, 0, 0, 0, 0, 0, 0, kind]))];
}
