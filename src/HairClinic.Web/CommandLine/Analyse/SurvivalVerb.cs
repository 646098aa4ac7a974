using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>analyse survival: curves, log-rank test and lifetime fit of a CSV file.</summary>
public static class SurvivalVerb
{
    public static Command Command()
    {
        var csv = new Option<string>("--csv") { Description = "The file; lines that start with # are comments.", Required = true };
        var time = Named("--time", "Column of times; with --event.");
        var ended = Named("--event", "Column that says 1 where it ended then and 0 where it went on.");
        var lower = Named("--lower", "Column of the last time known to go on; empty where none is. With --upper.");
        var upper = Named("--upper", "Column of the time by which it had ended; empty where it goes on.");
        var weight = Named("--weight", "Column of how many rows each stands for.");
        var group = Named("--group", "Column of the groups to compare.");
        var client = Named("--client", "Column of whose each row is; not with --flat-priors.");
        var covariates = Named("--covariates", "Columns of the model, separated by commas; without them the group alone.");
        var distribution = new Option<string>("--distribution")
        {
            Description = "weibull or lognormal.",
            DefaultValueFactory = _ => "weibull",
        };
        distribution.AcceptOnlyFromAmong("weibull", "lognormal");
        var flat = new Option<bool>("--flat-priors") { Description = "Plain maximum likelihood." };
        var low = Named("--window-low", "Days by which one in ten has ended, before anything was seen; 28 if not said.");
        var high = Named("--window-high", "Days by which nine in ten have ended, before anything was seen; 56 if not said.");
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
            distribution,
            flat,
            low,
            high,
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
                        result.GetValue(covariates)?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                            ?? []
                    ).EnsureValid();
                    if (names.Client is not null && result.GetValue(flat))
                        throw new Refusal(
                            "--client says whose effects to integrate out, by their prior: it does not go with --flat-priors."
                        );
                    var noise = result.GetValue(distribution) == "weibull" ? LifeDistribution.Weibull : LifeDistribution.LogNormal;
                    var input = SurvivalInput.Read(CsvTable.Read(result.GetValue(csv)!), names);
                    return SurvivalJsonBuilder.FromAnalysis(
                        new SurvivalAnalysis(
                            input,
                            noise,
                            result.GetValue(flat) ? null : Window(noise, result.GetValue(low), result.GetValue(high))
                        )
                    );
                }
            )
        );
        return command;
    }

    private static WindowPrior Window(LifeDistribution distribution, string? low, string? high)
    {
        var (from, to) = (AnalyseOutput.ParseNumber("--window-low", low ?? "28"), AnalyseOutput.ParseNumber("--window-high", high ?? "56"));
        return from > 0 && to > from
            ? WindowPrior.FromWindow(distribution, from, to)
            : throw new Refusal("A window needs 0 < --window-low < --window-high.");
    }

    private static Option<string?> Named(string name, string description) => new(name) { Description = description };
}
