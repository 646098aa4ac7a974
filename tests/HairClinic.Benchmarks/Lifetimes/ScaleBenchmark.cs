using System.Diagnostics;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Lifetimes;

/// <summary>Does the scale come back? Fifty seeds of 300 clients with three censored bonds each; for comparison, clients taken as alike.</summary>
public static class ScaleBenchmark
{
    private const int Seeds = 50;
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    public static Task RunAsync(Report report)
    {
        report.Say($"{Seeds} seeds, 300 clients with three bonds; a bond that holds is taken down at a rebond booked at random within");
        foreach (var (from, through) in new[] { (4, 7), (5, 8), (6, 9) })
            Play(report, from, through);
        return Task.CompletedTask;
    }

    private static void Play(Report report, int fromWeek, int throughWeek)
    {
        var (scales, alike, shifts) = (new List<double>(), new List<double>(), new List<double>());
        var (ended, watch) = (0, Stopwatch.StartNew());
        for (var seed = 1; seed <= Seeds; seed++)
        {
            var (spells, clients) = Draw(new Random(seed), 7 * fromWeek, 7 * throughWeek);
            var places = spells.Select(_ => Window.Place).ToArray();
            var fit = LifetimeFitter.Fit(
                LifeDistribution.Weibull,
                LifetimeFitRows.Create(spells, [], places, clients),
                Window.ToLifePriors([])
            );
            scales.Add(fit.Scale);
            shifts.Add(fit.Coefficients[0]);
            ended += fit.Ended;
            alike.Add(
                LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(spells, [], places), Window.ToLifePriors([])).Scale
            );
        }
        report.Say(
            $"weeks {fromWeek} to {throughWeek}: {1 - ended / 900.0 / Seeds:P0} censored; {watch.ElapsedMilliseconds} ms for all fits"
        );
        report.Say(
            $"  clients integrated out: mean error of the scale {scales.Average() - 1:P2}, mean of its size {scales.Average(s => Math.Abs(s - 1)):P2}; of the centre {shifts.Average():F4} widths of the window"
        );
        report.Say($"  clients taken as alike: mean error of the scale {alike.Average() - 1:P2}");
    }

    private static (Spell[] Spells, int[] Clients) Draw(Random dice, int from, int through)
    {
        var (spells, clients) = (new List<Spell>(), new List<int>());
        for (var client = 0; client < 300; client++)
        {
            var effect = Window.ClientFactor * Normal(dice);
            for (var bond = 0; bond < 3; bond++)
            {
                var noise = Math.Log(-Math.Log(1 - dice.NextDouble()));
                var hold = Math.Exp(Window.Centre + Window.Width * effect + Window.Sigma * noise);
                var booked = from + (through - from) * dice.NextDouble();
                spells.Add(hold <= booked ? Spell.Exact(hold) : Spell.RightCensored(booked));
                clients.Add(client);
            }
        }
        return ([.. spells], [.. clients]);
    }

    private static double Normal(Random dice) =>
        Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
