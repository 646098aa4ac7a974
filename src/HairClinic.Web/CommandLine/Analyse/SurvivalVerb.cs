using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>analyse survival: curves, log-rank test and lifetime fit of a CSV file.</summary>
public static class SurvivalVerb
{
    public static Command Command()
    {
        var csv = new Option<string>("--csv") { Description = "The file; lines that start with # are comments.", Required = true };
        var time = Named("--time", "Column of times, from 1e-9 to 1e12; with --event.");
        var ended = Named("--event", "Column that says 1 where it ended then and 0 where it went on.");
        var lower = Named("--lower", "Column of the last time known to go on; empty where none is. With --upper.");
        var upper = Named("--upper", "Column of the time by which it had ended; empty where it goes on.");
        var weight = Named("--weight", "Column of how many rows each stands for: 0, or from 1e-9 to 1e9.");
        var group = Named(
            "--group",
            "Column of the groups to compare; in the model words are kinds, and numbers a number unless --factor names it."
        );
        var client = Named("--client", "Column of whose each row is; not with --flat-priors.");
        var covariates = Named(
            "--covariates",
            "Columns of the model, separated by commas; without them the group alone. Each is a number unless --factor names it."
        );
        var factor = new Option<string[]>("--factor")
        {
            Description = "A covariate, or the group, whose cells name kinds, whatever they look like; once for each.",
            DefaultValueFactory = _ => [],
        };
        var distribution = new Option<string>("--distribution")
        {
            Description = "weibull or lognormal.",
            DefaultValueFactory = _ => "weibull",
        };
        distribution.AcceptOnlyFromAmong("weibull", "lognormal");
        var flat = new Option<bool>("--flat-priors") { Description = "Plain maximum likelihood." };
        var window = new WindowOptions("--window-low", "--window-high", 28, 56);
        var command = new Command("survival", "How long things last: curves, log-rank test and lifetime fit of a CSV file, as JSON.")
        {
            csv,
            time,
            ended,
            lower,
            upper,
            weight,
            group,
            client,
            covariates,
            factor,
            distribution,
            flat,
            window.Low.Option,
            window.High.Option,
        };
        command.SetAction(result =>
            AnalyseOutput.RunAndWrite(
                result.InvocationConfiguration,
                () =>
                {
                    var names = new SurvivalColumns(
                        result.GetValue(time),
                        result.GetValue(ended),
                        result.GetValue(lower),
                        result.GetValue(upper),
                        result.GetValue(weight),
                        result.GetValue(group),
                        result.GetValue(client),
                        Listed(result.GetValue(covariates)),
                        [.. result.GetValue(factor)!.Distinct()]
                    ).EnsureValid();
                    if (names.Client is not null && result.GetValue(flat))
                        throw new Refusal(
                            "--client says whose effects to integrate out, by their prior: it does not go with --flat-priors."
                        );
                    if (result.GetValue(flat) && window.IsSaid(result))
                        throw new Refusal("A window says what is assumed before anything was seen: it does not go with --flat-priors.");
                    var noise = result.GetValue(distribution) == "weibull" ? LifeDistribution.Weibull : LifeDistribution.LogNormal;
                    var input = SurvivalInput.Read(CsvTable.Read(result.GetValue(csv)!), names);
                    return SurvivalJsonBuilder.FromAnalysis(
                        new SurvivalAnalysis(input, noise, result.GetValue(flat) ? null : window.Read(result, noise))
                    );
                }
            )
        );
        return command;
    }

    private static string[] Listed(string? covariates)
    {
        var names = covariates?.Split(',', StringSplitOptions.TrimEntries) ?? [];
        return names.Contains("") ? throw new Refusal("--covariates \"{0}\" leaves a name empty.", covariates!) : names;
    }

    private static Option<string?> Named(string name, string description) => new(name) { Description = description };
}
