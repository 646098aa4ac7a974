using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>Whether the groups differ by more than chance would have it.</summary>
/// <param name="InModel">By likelihood ratio in the model, as some ends are known only within an interval; else by log-rank.</param>
/// <param name="Undefined">Why there is no test; null where there is one.</param>
/// <param name="Compared">Groups in it.</param>
/// <param name="LeftOut">Groups of too few spells to be in it, and those of which nobody wrote it down.</param>
/// <param name="Sooner">Which ends soonest of those of which enough ended, by what the test goes by; null where there are no two.</param>
/// <param name="TimesAsLong">How long the sooner lasts against the later in the model, each against its own window; null without the model.</param>
public sealed record GroupComparison(
    bool InModel,
    double ChiSquare,
    int Degrees,
    double P,
    LifetimeFitNote? Undefined,
    int Compared,
    int LeftOut,
    LastingGroup? Sooner = null,
    LastingGroup? Later = null,
    double? TimesAsLong = null
)
{
    /// <summary>The test's approximation is poor for groups of fewer.</summary>
    public const int FewestSpells = 5;
    public const double Chance = 0.05;

    /// <summary>Enough ended in two groups at least to say more than the number.</summary>
    public bool CanTell => Undefined is null && Sooner is not null;

    /// <param name="determined">The names of covariates that follow from the group begin so; they are left out of the model.</param>
    public static GroupComparison Compare(
        IReadOnlyList<LastingGroup> groups,
        ILookup<Guid?, WearSpell> spells,
        IReadOnlyCollection<string> determined,
        IReadOnlyDictionary<KnownCovariate, double> factors
    )
    {
        var compared = groups.Where(g => g.Id is not null && g.Spells >= FewestSpells).ToList();
        var leftOut = groups.Count - compared.Count;
        var all = compared.SelectMany(g => spells[g.Id]).Select(s => s.Spell).ToArray();
        if (SurvivalCurve.CanEstimate(all))
        {
            var test = LogRank.Test(all, [.. compared.SelectMany((g, number) => Enumerable.Repeat(number, spells[g.Id].Count()))]);
            var why = test.Undefined is { } reason ? new LifetimeFitNote(reason) : null;
            var plain = new GroupComparison(false, test.ChiSquare, test.DegreesOfFreedom, test.P, why, compared.Count, leftOut);
            // More ends than expected: sooner.
            return why is null ? plain.Ranked(compared, [.. test.Groups.Select(g => -g.Observed / g.Expected)]) : plain;
        }
        // What has no window tells the model nothing.
        compared = [.. compared.Where(g => spells[g.Id].Any(s => s.Window is not null))];
        var ratio = InTheModel([.. compared.Select(g => spells[g.Id].Where(s => s.Window is not null))], determined, factors);
        var missing =
            ratio.Missing is { Argument: { } name } note && LikelihoodRatio.ParseGroupIndex(name) is { } number
                ? note with
                {
                    Argument = compared[number].Name,
                }
                : ratio.Missing;
        leftOut = groups.Count - compared.Count;
        var modelled = new GroupComparison(true, ratio.ChiSquare, ratio.DegreesOfFreedom, ratio.P, missing, compared.Count, leftOut);
        return missing is null ? modelled.Ranked(compared, ratio.Effects) : modelled;
    }

    private GroupComparison Ranked(List<LastingGroup> compared, IReadOnlyList<double> places)
    {
        var told = compared.Zip(places).Where(g => g.First.Ended >= LastingGroup.FewestEnded).OrderBy(g => g.Second).ToList();
        return told.Count < 2
            ? this
            : this with
            {
                Sooner = told[0].First,
                Later = told[^1].First,
                TimesAsLong = InModel ? Math.Exp(told[0].Second - told[^1].Second) : null,
            };
    }

    private static LikelihoodRatio InTheModel(
        List<IEnumerable<WearSpell>> groups,
        IReadOnlyCollection<string> determined,
        IReadOnlyDictionary<KnownCovariate, double> factors
    )
    {
        var told = groups.SelectMany(g => g).ToList();
        // Lots and seasons are too much to be held apart in a comparison of anything else.
        string[] apart = [CovariateValue.LotPrefix, CovariateValue.SeasonPrefix];
        var left = determined.Concat(apart).Concat(Nested(groups)).ToList();
        var (columns, clients) = WearModelFitter.DesignMatrix(
            told,
            name => !left.Exists(d => name.StartsWith(d, StringComparison.Ordinal))
        );
        return LikelihoodRatio.TestGroups(
            LifeDistribution.Weibull,
            [.. told.Select(s => s.Spell)],
            [.. groups.SelectMany((g, number) => g.Select(_ => number))],
            columns,
            [.. told.Select(s => s.Window!.Value.Place)],
            clients,
            WearModelFitter.PriorsOf(columns.Select(c => c.Name), factors)
        );
    }

    // Where every base comes from one workshop only, bases left in the model would tell all there is to tell of the workshops.
    private static IEnumerable<string> Nested(List<IEnumerable<WearSpell>> groups) =>
        new[] { CovariateValue.BasePrefix, CovariateValue.AdhesivePrefix, CovariateValue.WorkshopPrefix }.Where(prefix =>
            groups
                .SelectMany((g, number) => g.SelectMany(s => s.Columns).Select(c => c.Name).Distinct().Select(name => (name, number)))
                .Where(c => c.name.StartsWith(prefix, StringComparison.Ordinal))
                .GroupBy(c => c.name)
                .ToList()
                is { Count: > 0 } found
            && found.TrueForAll(name => name.Count() == 1)
        );
}
