using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>
/// Are the chances what they say? Practices drawn from the model's own priors, seen as salons see them, predicted, then played on.
/// </summary>
public static class CalibrationBenchmark
{
    /// <summary>By what is known of the client's own.</summary>
    internal static readonly string[] Histories = ["0 own spells", "1-2 own spells", "3+ own spells"];

    public static Task RunAsync(Report report)
    {
        var (practices, seed) = (report.Option("practices", 200), report.Option("seed", 1));
        CalibrationText.SayModel(report, practices, seed);
        CalibrationText.SayTable(
            report,
            "Truth as the model has it (Weibull)",
            Play(practices, seed, LifeDistribution.Weibull),
            asModelled: true
        );
        CalibrationText.SayTable(
            report,
            "Truth log-normal, fitted as Weibull (for information; no target)",
            Play(practices, seed, LifeDistribution.LogNormal),
            asModelled: false
        );
        return Task.CompletedTask;
    }

    internal static Tally[] Play(int practices, int seed, LifeDistribution truly)
    {
        var tallies = new Tally[practices];
        Parallel.For(0, practices, p => tallies[p] = new PracticeStory(unchecked(seed * 1_000_003 + p), truly).Play());
        return tallies;
    }
}
