using System.Diagnostics;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Lifetimes;

/// <summary>Does the scale come back? Fifty seeds of 300 clients with three censored bonds each; for comparison, clients taken as alike.</summary>
public static class ScaleBenchmark
{
    private const int Seeds = 50;
    private static readonly WindowPrior Window = WindowPrior.Of(LifeDistribution.Weibull, 28, 56);

    public static Task RunAsync(Report report)
    {
        var (scales, alike, shifts) = (new List<double>(), new List<double>(), new List<double>());
        var watch = Stopwatch.StartNew();
        for (var seed = 1; seed <= Seeds; seed++)
        {
            var (spells, clients) = Draw(new Random(seed));
            var places = spells.Select(_ => Window.Place).ToArray();
            var fit = LifetimeModel.Fit(LifeDistribution.Weibull, LifeRows.Of(spells, [], places, clients), Window.Priors([]));
            scales.Add(fit.Scale);
            shifts.Add(fit.Coefficients[0]);
            alike.Add(LifetimeModel.Fit(LifeDistribution.Weibull, LifeRows.Of(spells, [], places), Window.Priors([])).Scale);
        }
        report.Say(
            $"{Seeds} seeds, 300 clients with three bonds, censored at a rebond booked for weeks 4 to 7; {watch.ElapsedMilliseconds} ms"
        );
        report.Say(
            $"clients integrated out   mean scale error {scales.Average() - 1:P2}, mean of its size {scales.Average(s => Math.Abs(s - 1)):P2}"
        );
        report.Say($"                         mean error of the centre, in widths of the window {shifts.Average():F4}");
        report.Say($"clients taken as alike   mean scale error {alike.Average() - 1:P2}");
        return Task.CompletedTask;
    }

    private static (Spell[] Spells, int[] Clients) Draw(Random dice)
    {
        var (spells, clients) = (new List<Spell>(), new List<int>());
        for (var client = 0; client < 300; client++)
        {
            var effect = Window.ClientFactor * Normal(dice);
            for (var bond = 0; bond < 3; bond++)
            {
                var noise = Math.Log(-Math.Log(1 - dice.NextDouble()));
                var hold = Math.Exp(Window.Centre + Window.Width * effect + Window.Sigma * noise);
                var booked = 28 + 21 * dice.NextDouble();
                spells.Add(hold <= booked ? Spell.At(hold) : Spell.After(booked));
                clients.Add(client);
            }
        }
        return ([.. spells], [.. clients]);
    }

    private static double Normal(Random dice) =>
        Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
