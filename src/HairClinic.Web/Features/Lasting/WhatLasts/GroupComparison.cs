using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Data.Learning;

namespace HairClinic.Web.Features.Lasting.WhatLasts;

/// <summary>Whether the groups differ by more than chance would have it.</summary>
/// <param name="InModel">By likelihood ratio in the model, as some ends are known only within an interval; else by log-rank.</param>
/// <param name="Undefined">Why there is no test; null where there is one.</param>
/// <param name="Compared">Groups in it.</param>
/// <param name="LeftOut">Groups of too few spells to be in it, and those of which nobody wrote it down.</param>
public sealed record GroupComparison(
    bool InModel,
    double ChiSquare,
    int Degrees,
    double P,
    FitNote? Undefined,
    int Compared,
    int LeftOut,
    LastingGroup? Sooner,
    LastingGroup? Later
)
{
    /// <summary>The test's approximation is poor for groups of fewer.</summary>
    public const int FewestSpells = 5;
    public const double Chance = 0.05;

    /// <summary>Enough ended in two groups at least to say more than the number.</summary>
    public bool CanTell => Undefined is null && Sooner is not null;

    /// <param name="determined">The names of covariates that follow from the group begin so; they are left out of the model.</param>
    public static GroupComparison Of(
        IReadOnlyList<LastingGroup> groups,
        ILookup<Guid?, WearSpell> spells,
        IReadOnlyCollection<string> determined,
        IReadOnlyDictionary<WearHabit, double> factors
    )
    {
        var compared = groups.Where(g => g.Id is not null && g.Spells >= FewestSpells).ToList();
        var rows = compared.SelectMany((group, number) => spells[group.Id].Select(spell => (Spell: spell, Number: number))).ToList();
        var told = compared.Where(g => g.CanTell).OrderBy(g => g.Curve.Median).ToList();
        var (sooner, later) = told.Count > 1 ? (told[0], told[^1]) : (null, null);
        var plain = rows.Select(r => r.Spell.Spell).ToArray();
        if (SurvivalCurve.Reads(plain))
        {
            var test = LogRank.Of(plain, [.. rows.Select(r => r.Number)]);
            return Made(false, test.ChiSquare, test.DegreesOfFreedom, test.P, test.Undefined is { } why ? new FitNote(why) : null);
        }
        var ratio = InTheModel([.. rows.Where(r => r.Spell.Window is not null)], determined, factors);
        return Made(true, ratio.ChiSquare, ratio.DegreesOfFreedom, ratio.P, ratio.Missing);

        GroupComparison Made(bool inModel, double chiSquare, int degrees, double p, FitNote? undefined) =>
            new(inModel, chiSquare, degrees, p, undefined, compared.Count, groups.Count - compared.Count, sooner, later);
    }

    private static LikelihoodRatio InTheModel(
        List<(WearSpell Spell, int Number)> told,
        IReadOnlyCollection<string> determined,
        IReadOnlyDictionary<WearHabit, double> factors
    )
    {
        var numbers = new Dictionary<int, int>();
        int[] groups = [.. told.Select(r => numbers.TryGetValue(r.Number, out var n) ? n : numbers[r.Number] = numbers.Count)];
        var names = told.SelectMany(r => r.Spell.Columns)
            .Select(c => c.Name)
            .Distinct()
            .Where(name => !determined.Any(d => name.StartsWith(d, StringComparison.Ordinal)))
            .Order(StringComparer.Ordinal)
            .ToList();
        var people = new Dictionary<Guid, int>();
        int[] clients =
        [
            .. told.Select(r =>
                r.Spell.ClientId is { } id
                    ? people.TryGetValue(id, out var n)
                        ? n
                        : people[id] = people.Count
                    : -1
            ),
        ];
        return LikelihoodRatio.Of(
            LifeDistribution.Weibull,
            [.. told.Select(r => r.Spell.Spell)],
            groups,
            [
                .. names.Select(name => new LifeColumn(
                    name,
                    [.. told.Select(r => r.Spell.Columns.Where(c => c.Name == name).Sum(c => c.Value))]
                )),
            ],
            [.. told.Select(r => r.Spell.Window!.Value.Place)],
            clients,
            WearFits.PriorsOf(names, factors)
        );
    }
}
