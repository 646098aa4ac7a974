using System.CommandLine;
using System.Text.Json.Nodes;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>analyse gap: one unit in wear, none in flight; when must the next be ordered?</summary>
public static class GapRiskVerb
{
    public static Command Command()
    {
        var shape = Number("--life-shape", "Weibull shape of a unit's life.");
        var scale = Number("--life-scale", "Characteristic life, worn days.");
        var age = Number("--age", "Worn days until today.");
        var mean = Number("--lead-mean-log", "Centre of ln(lead time in days).");
        var spread = Number("--lead-sd-log", "Scale of ln(lead time in days).");
        var freedom = new Option<string?>("--lead-df") { Description = "Degrees of freedom of Student's t; without it normal." };
        var preparation = Number("--preparation", "Days from arrival until it can be bonded.");
        var alpha = Number("--alpha", "The chance of a gap that is accepted; 0.05 if not said.", required: false);
        var horizon = Number("--horizon", "Days within which days without hair are counted; 365 if not said.", required: false);
        var command = new Command("gap", "When the next unit must be ordered, as JSON.")
        {
            shape,
            scale,
            age,
            mean,
            spread,
            freedom,
            preparation,
            alpha,
            horizon,
        };
        command.SetAction(result =>
            AnalyseOutput.RunAndWrite(
                result.InvocationConfiguration,
                () =>
                {
                    double Read(Option<string?> option) => AnalyseOutput.ParseNumber(option.Name, result.GetValue(option)!);
                    double Above(Option<string?> option) =>
                        Read(option) is var value and > 0 ? value : throw new Refusal("{0} must be above 0.", option.Name);
                    double NotBelow(Option<string?> option) =>
                        Read(option) is var value and >= 0 ? value : throw new Refusal("{0} must not be below 0.", option.Name);
                    double? degrees = result.GetValue(freedom) is null ? null : Above(freedom);
                    var gap = new GapByQuadrature(
                        new AgedWeibullLife(Above(shape), Above(scale), NotBelow(age)),
                        new ContinuousLeadTime(Read(mean), Above(spread), degrees),
                        NotBelow(preparation)
                    );
                    var accepted = result.GetValue(alpha) is null ? 0.05 : Read(alpha);
                    if (accepted is not (> 0 and < 1))
                        throw new Refusal("--alpha must lie between 0 and 1.");
                    return new JsonObject
                    {
                        ["gapIfOrderedToday"] = SurvivalJsonBuilder.Number(gap.GapChanceIfOrderedIn(0)),
                        ["reorderInDays"] = gap.ReorderInDays(accepted),
                        ["expectedDaysWithoutHair"] = SurvivalJsonBuilder.Number(
                            gap.ExpectedDaysWithoutHair(result.GetValue(horizon) is null ? 365 : NotBelow(horizon))
                        ),
                    };
                }
            )
        );
        return command;
    }

    private static Option<string?> Number(string name, string description, bool required = true) =>
        new(name) { Description = description, Required = required };
}
