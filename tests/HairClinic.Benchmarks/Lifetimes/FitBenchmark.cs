using System.Diagnostics;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Lifetimes;

/// <summary>Maximum likelihood of a Weibull and of a log-normal model: a million rows, eight covariates, half of the rows still going on.</summary>
/// <remarks>Against the plainest Newton in one thread (Weibull) and, where R is installed, against its survreg on the same numbers.</remarks>
public static class FitBenchmark
{
    private const int Rows = 1_000_000;
    private const int Covariates = 8;

    public static async Task RunAsync(Report report)
    {
        var (spells, columns) = Draw(new Random(8));
        var watch = Stopwatch.StartNew();
        var rows = LifetimeFitRows.Create(spells, columns);
        report.Say($"{Rows:N0} rows, {Covariates} covariates; laying them out took {watch.ElapsedMilliseconds} ms");
        LifetimeFit? fit = null;
        double[] bare = [];
        var bareRows = BareFit.Lay(spells, columns);
        var times = await Rounds.ComputeAsync(
            5,
            () =>
            {
                fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, LifePriors.Flat(Covariates));
                return Task.CompletedTask;
            },
            () =>
            {
                bare = BareFit.Fit(bareRows, Covariates);
                return Task.CompletedTask;
            }
        );
        var (ours, plain) = (Rounds.Median(times[0]), Rounds.Median(times[1]));
        var apart = fit!.Coefficients.Append(fit.LogScale).Zip(bare, (a, b) => Math.Abs(a - b)).Max();
        report.Say(
            $"ours   {ours:F0} ms of processor time, shared by {Environment.ProcessorCount} cores; {fit.Iterations} iterations, log-likelihood {fit.LogLikelihood:F6}"
        );
        report.Say($"plain  {plain:F0} ms in one thread; largest difference of an estimate {apart:E1}");
        report.Say($"ratio  {plain / ours:F1}");
        foreach (var distribution in Enum.GetValues<LifeDistribution>())
            await AgainstSurvregAsync(report, distribution, spells, columns);
    }

    private static async Task AgainstSurvregAsync(Report report, LifeDistribution distribution, Spell[] spells, CovariateColumn[] columns)
    {
        if (await SurvregFit.RunAsync(distribution, spells, columns, times: 3) is not { } survreg)
        {
            report.Say("survreg: no Rscript on the path, not compared; the package r-cran-survival brings it");
            return;
        }
        LifetimeFit fit = null!;
        Func<Task> ours = () =>
        {
            fit = LifetimeFitter.Fit(distribution, LifetimeFitRows.Create(spells, columns), LifePriors.Flat(Covariates));
            return Task.CompletedTask;
        };
        var wall = Rounds.Median((await Rounds.TimeAsync(7, ours))[0]);
        var processor = Rounds.Median((await Rounds.ComputeAsync(7, ours))[0]);
        var (wallOfR, processorOfR) = (1000 * Rounds.Median(survreg.Seconds), 1000 * Rounds.Median(survreg.Processor));
        var apart = fit.Coefficients.Append(fit.LogScale).Zip(survreg.Parameters, (a, b) => Math.Abs(a - b) / Math.Abs(b)).Max();
        report.Say(
            $"{distribution} against survreg of {survreg.Version}, one thread, its model frame included; ours with its rows laid out, up to {Environment.ProcessorCount} threads"
        );
        report.Say($"  wall time       ours {wall:F0} ms, survreg {wallOfR:F0} ms: ratio {wallOfR / wall:F1}");
        report.Say($"  processor time  ours {processor:F0} ms, survreg {processorOfR:F0} ms: ratio {processorOfR / processor:F1}");
        report.Say($"  largest relative difference of an estimate {apart:E1}");
    }

    private static (Spell[] Spells, CovariateColumn[] Columns) Draw(Random dice)
    {
        var columns = Enumerable.Range(1, Covariates).Select(j => new CovariateColumn($"x{j}", new double[Rows])).ToArray();
        var spells = new Spell[Rows];
        for (var i = 0; i < Rows; i++)
        {
            var centre = 4.0;
            for (var j = 0; j < Covariates; j++)
            {
                var x = j % 2 == 0 ? dice.NextDouble() * 2 - 1 : dice.Next(2);
                columns[j].Values[i] = x;
                centre += 0.1 * (j - 3) * x;
            }
            var life = Math.Exp(centre + 0.4 * Math.Log(-Math.Log(1 - dice.NextDouble())));
            var seen = 20 + 60 * dice.NextDouble();
            spells[i] = life <= seen ? Spell.Exact(life) : Spell.RightCensored(seen);
        }
        return (spells, columns);
    }
}
