using System.Text.Json.Nodes;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A remaining life as JSON: all days are worn days from today.</summary>
public static class RemainingLifeJsonBuilder
{
    // One in a million.
    private const double Rare = 1e-6;

    public static JsonObject FromAnswer(RemainingLifeAnswer life, IEnumerable<double> days) =>
        new()
        {
            ["distribution"] = life.Distribution == LifeDistribution.Weibull ? "weibull" : "lognormal",
            ["age"] = life.Age,
            ["survivalToAge"] = SurvivalJsonBuilder.Number(life.ToAge),
            ["median"] = SurvivalJsonBuilder.Number(life.Quantile(0.5)),
            ["band"] = new JsonObject
            {
                ["from"] = SurvivalJsonBuilder.Number(life.Quantile(0.1)),
                ["to"] = SurvivalJsonBuilder.Number(life.Quantile(0.9)),
            },
            ["survival"] = new JsonArray([
                .. days.Select(at => new JsonObject { ["days"] = at, ["survival"] = SurvivalJsonBuilder.Number(life.Survival(at)) }),
            ]),
            ["looks"] = life.Looks,
            ["notes"] = new JsonArray([.. Notes(life).Select(note => JsonValue.Create(note))]),
        };

    private static IEnumerable<string> Notes(RemainingLifeAnswer life)
    {
        if (life.ToAge < Rare)
            yield return "Fewer than one such unit in a million lasts to this age: the age, or the life, may be wrong.";
        if (life.Looks > 0)
            yield return "How grades follow from lives is assumed here, not learnt from a practice's own records.";
    }
}
