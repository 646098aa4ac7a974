using System.CommandLine;
using System.Text.Json.Nodes;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>analyse gap: one unit in wear, none in flight; when must the next be ordered?</summary>
public static class GapRiskVerb
{
    public static Command Command()
    {
        var life = new WeibullOptions(required: true);
        var age = new NumberOption("--age", "Worn days until today.", 0, 1e9, required: true);
        var mean = new NumberOption("--lead-mean-log", "Centre of ln(lead time in days).", -100, 100, required: true);
        var spread = new NumberOption("--lead-sd-log", "Scale of ln(lead time in days).", 1e-9, 10, required: true);
        var freedom = new NumberOption(
            "--lead-df",
            "Degrees of freedom of Student's t; without it normal.",
            ContinuousLeadTime.FewestDegreesOfFreedom,
            1e300
        );
        var preparation = new NumberOption("--preparation", "Days from arrival until it can be bonded.", 0, 1e9, required: true);
        var alpha = new NumberOption("--alpha", "The chance of a gap that is accepted, neither 0 nor 1.", 0, 1, unlessSaid: 0.05);
        var horizon = new NumberOption("--horizon", "Days within which days without hair are counted.", 0, 1e300, unlessSaid: 365);
        var command = new Command("gap", Help)
        {
            life.Shape.Option,
            life.Scale.Option,
            age.Option,
            mean.Option,
            spread.Option,
            freedom.Option,
            preparation.Option,
            alpha.Option,
            horizon.Option,
        };
        command.SetAction(result =>
            AnalyseOutput.RunAndWrite(
                result.InvocationConfiguration,
                () =>
                {
                    var gap = new GapByQuadrature(
                        new AgedWeibullLife(life.Shape.Number(result), life.Scale.Number(result), age.Number(result)),
                        new ContinuousLeadTime(mean.Number(result), spread.Number(result), freedom.Read(result)),
                        preparation.Number(result)
                    );
                    var accepted = alpha.Number(result);
                    if (accepted is 0 or 1)
                        throw new Refusal("--alpha must lie between 0 and 1, and be neither.");
                    return Document(gap, accepted, horizon.Number(result));
                }
            )
        );
        return command;
    }

    private static string Help =>
        "When the next unit must be ordered, as JSON. reorderInDays is the largest whole number of days the order can wait; where there is "
        + "none, reorderReason says why: it is too late today, or (pastSight) it can wait "
        + FormattableString.Invariant($"{GapByQuadrature.FarthestDays} days or longer, and farther is not looked.");

    private static JsonObject Document(GapByQuadrature gap, double alpha, double horizon)
    {
        var days = gap.ReorderInDays(alpha);
        var pastSight = days == GapByQuadrature.FarthestDays;
        return new JsonObject
        {
            ["gapIfOrderedToday"] = SurvivalJsonBuilder.Number(gap.GapChanceIfOrderedIn(0)),
            ["reorderInDays"] = pastSight ? null : days,
            ["pastSight"] = pastSight,
            ["reorderReason"] =
                pastSight
                    ? FormattableString.Invariant(
                        $"The order can wait {GapByQuadrature.FarthestDays} days or longer: farther is not looked."
                    )
                : days is null ? "Ordered today, the chance of a gap is above --alpha already."
                : null,
            ["expectedDaysWithoutHair"] = SurvivalJsonBuilder.Number(gap.ExpectedDaysWithoutHair(horizon)),
        };
    }
}
