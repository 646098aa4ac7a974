using HairClinic.Domain.Wear.Curves;
using MathNet.Numerics;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Whether groups last differently, by the likelihood ratio in the model: for ends that are known only within an interval.</summary>
/// <param name="Effects">Of each group on ln T, against the first; empty where there is no test.</param>
/// <param name="Missing">Why there is no test; null where there is one.</param>
public sealed record LikelihoodRatio(
    double ChiSquare,
    int DegreesOfFreedom,
    double P,
    IReadOnlyList<double> Effects,
    LifetimeFitNote? Missing
)
{
    private const string GroupName = "group ";

    /// <summary>The group a note speaks of; null where it speaks of something else.</summary>
    public static int? ParseGroupIndex(string argument) =>
        argument.StartsWith(GroupName, StringComparison.Ordinal)
            ? int.Parse(argument.AsSpan(GroupName.Length), System.Globalization.CultureInfo.InvariantCulture)
            : null;

    /// <param name="groups">For each spell its group, from 0; each has at least one.</param>
    /// <param name="others">Covariates that say nothing of the group.</param>
    /// <param name="priors">Of all but the groups' effects, which are free; the same with and without them, so that they cancel.</param>
    public static LikelihoodRatio TestGroups(
        LifeDistribution distribution,
        ReadOnlySpan<Spell> spells,
        ReadOnlySpan<int> groups,
        IReadOnlyList<CovariateColumn> others,
        ReadOnlySpan<RowLocationScale> places,
        ReadOnlySpan<int> clients,
        LifePriors priors
    )
    {
        var degrees = 0;
        foreach (var group in groups)
            degrees = Math.Max(degrees, group);
        if (degrees == 0)
            return Not(new("There are no two groups to compare."));
        // The groups first: where something follows from something else, it is then the covariate with a prior that gives way.
        var columns = new List<CovariateColumn>();
        for (var g = 1; g <= degrees; g++)
        {
            var values = new double[spells.Length];
            for (var i = 0; i < values.Length; i++)
                values[i] = groups[i] == g ? 1 : 0;
            columns.Add(new CovariateColumn($"{GroupName}{g}", values));
        }
        columns.AddRange(others);
        var free = priors with { Coefficients = [.. Enumerable.Repeat(NormalPrior.Flat, degrees), .. priors.Coefficients] };
        var (with, without) = LifetimeFitter.FitToCompare(
            distribution,
            (LifetimeFitRows.Create(spells, columns, places, clients), free),
            (LifetimeFitRows.Create(spells, others, places, clients), priors)
        );
        if (with.Missing is { } why)
            return Not(why);
        if (without.Missing is { } reason)
            return Not(reason);
        var chiSquare = Math.Max(0, 2 * (with.LogPosterior - without.LogPosterior));
        var p = SpecialFunctions.GammaUpperRegularized(degrees / 2.0, chiSquare / 2);
        return new(chiSquare, degrees, p, [0, .. with.Coefficients.Skip(1).Take(degrees)], null);
    }

    private static LikelihoodRatio Not(LifetimeFitNote why) => new(double.NaN, 0, double.NaN, [], why);
}
