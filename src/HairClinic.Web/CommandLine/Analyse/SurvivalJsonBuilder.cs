using System.Text.Json.Nodes;
using MathNet.Numerics;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A survival analysis as JSON. What there is not is null, and beside it stands the reason.</summary>
public static class SurvivalJsonBuilder
{
    private static readonly double[] Probabilities = [0.1, 0.25, 0.5, 0.75, 0.9];

    public static JsonObject FromAnalysis(SurvivalAnalysis analysis)
    {
        var fit = analysis.Fit;
        var there = fit.Missing is null;
        var size = fit.Names.Count + 1;
        return new JsonObject
        {
            ["rows"] = analysis.Input.Spells.Length,
            ["ended"] = analysis.Input.Spells.Count(s => s.End != SpellEnd.After && s.Weight > 0),
            ["distribution"] = analysis.Distribution == LifeDistribution.Weibull ? "weibull" : "lognormal",
            ["priors"] = Priors(analysis.Window),
            ["converged"] = fit.Converged,
            ["iterations"] = fit.Iterations,
            ["estimateReason"] = fit.Missing?.Text,
            ["notes"] = new JsonArray([.. fit.Notes.Select(n => (JsonNode)n.Text)]),
            ["coefficients"] = there ? ByName(fit, analysis.Coefficient) : null,
            ["stdErrors"] = there ? ByName(fit, k => Math.Sqrt(analysis.Covariance(k, k))) : null,
            ["scale"] = there ? Number(analysis.Scale) : null,
            ["logLikelihood"] = there ? Number(fit.LogLikelihood) : null,
            ["covarianceNames"] = there ? new JsonArray([.. fit.Names.Append("ln scale").Select(n => (JsonNode)n)]) : null,
            ["covariance"] = there ? List(size, k => List(size, l => Number(analysis.Covariance(k, l)))) : null,
            ["kaplanMeier"] = analysis.AreIntervals ? null : new JsonArray([.. analysis.Groups.SelectMany(KaplanMeier)]),
            ["kaplanMeierReason"] = analysis.AreIntervals ? "Some ends are known only within an interval: see turnbull." : null,
            ["turnbull"] = analysis.AreIntervals ? new JsonArray([.. analysis.Groups.Select(Turnbull)]) : null,
            ["logRank"] = LogRank(analysis),
            ["logRankReason"] = analysis.LogRank is { } test ? test.Undefined : "No group was named.",
            ["groupLikelihoodRatio"] = LikelihoodRatio(analysis),
            ["quantiles"] = new JsonArray([.. analysis.Groups.SelectMany((group, g) => Quantiles(analysis, group, g))]),
        };
    }

    /// <summary>A number, or null where there is none.</summary>
    public static JsonNode? Number(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    private static JsonNode Priors(WindowPrior? window) =>
        window is null
            ? "flat"
            : new JsonObject
            {
                ["centre"] = window.Value.Centre,
                ["sigma"] = window.Value.Sigma,
                ["practiceSpread"] = window.Value.PracticeSpread,
                ["clientSpread"] = window.Value.ClientSpread,
                ["logScaleSpread"] = LifePriors.UsualLogScale.Spread,
                ["coefficientSpread"] = LifePriors.UsualCoefficient.Spread,
            };

    private static JsonArray List(int count, Func<int, JsonNode?> item) => new([.. Enumerable.Range(0, count).Select(item)]);

    private static JsonObject ByName(LifetimeFit fit, Func<int, double> value) =>
        new(fit.Names.Select((name, k) => KeyValuePair.Create(name, Number(value(k)))));

    private static IEnumerable<JsonNode> KaplanMeier((string? Name, Spell[] Spells) group) =>
        SurvivalCurve
            .Estimate(group.Spells)
            .Steps.Select(step => new JsonObject
            {
                ["group"] = group.Name,
                ["time"] = step.Time,
                ["atRisk"] = step.AtRisk,
                ["events"] = step.Events,
                ["survival"] = step.Survival,
                ["stdError"] = Number(step.StdError),
                ["lower"] = Number(step.Lower),
                ["upper"] = Number(step.Upper),
            });

    private static JsonNode Turnbull((string? Name, Spell[] Spells) group)
    {
        var curve = TurnbullCurve.Estimate(group.Spells);
        return new JsonObject
        {
            ["group"] = group.Name,
            ["converged"] = curve.Converged,
            ["iterations"] = curve.Iterations,
            ["steps"] = new JsonArray([
                .. curve.Steps.Select(step => new JsonObject
                {
                    ["from"] = step.From,
                    ["to"] = Number(step.To),
                    ["mass"] = step.Mass,
                    ["survival"] = step.Survival,
                }),
            ]),
        };
    }

    private static JsonObject? LogRank(SurvivalAnalysis analysis) =>
        analysis.LogRank is { Undefined: null } test
            ? new JsonObject
            {
                ["chiSquare"] = test.ChiSquare,
                ["degreesOfFreedom"] = test.DegreesOfFreedom,
                ["p"] = test.P,
                ["groups"] = new JsonArray([
                    .. test.Groups.Select(
                        (group, g) =>
                            new JsonObject
                            {
                                ["group"] = analysis.Groups[g].Name,
                                ["n"] = group.Count,
                                ["observed"] = group.Observed,
                                ["expected"] = group.Expected,
                            }
                    ),
                ]),
            }
            : null;

    private static JsonObject? LikelihoodRatio(SurvivalAnalysis analysis)
    {
        if (analysis is not { With: { Missing: null } with, Without: { Missing: null } without })
            return null;
        var degrees = with.Names.Count - without.Names.Count;
        var chiSquare = Math.Max(0, 2 * (with.LogLikelihood - without.LogLikelihood));
        return new JsonObject
        {
            ["chiSquare"] = chiSquare,
            ["degreesOfFreedom"] = degrees,
            ["p"] = SpecialFunctions.GammaUpperRegularized(degrees / 2.0, chiSquare / 2),
        };
    }

    private static IEnumerable<JsonNode> Quantiles(SurvivalAnalysis analysis, (string? Name, Spell[] Spells) group, int place)
    {
        var curve = analysis.AreIntervals ? null : SurvivalCurve.Estimate(group.Spells);
        foreach (var probability in Probabilities)
        {
            var seen = curve?.Quantile(probability);
            var model = analysis.Fit.Missing is null ? analysis.ModelQuantile(place, probability) : (double.NaN, double.NaN);
            yield return new JsonObject
            {
                ["group"] = group.Name,
                ["probability"] = probability,
                ["time"] = Number(seen?.Time),
                ["lower"] = Number(seen?.Lower),
                ["upper"] = Number(seen?.Upper),
                ["modelTime"] = Number(model.Item1),
                ["modelStdError"] = Number(model.Item2),
            };
        }
    }
}
