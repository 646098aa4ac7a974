using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>The model of grades written down once more from its definition, by brute force: slow, and shared with nothing.</summary>
internal static class GradesByDefinition
{
    // Hermite's rule of five for a standard normal: Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.10, nodes times
    // √2 and weights over √π; from memory.
    private static readonly (double At, double Weight)[] Uneven =
    [
        (-2.8569700138728056, 0.011257411327720689),
        (-1.3556261799742659, 0.22207592200561264),
        (0, 0.53333333333333333),
        (1.3556261799742659, 0.22207592200561264),
        (2.8569700138728056, 0.011257411327720689),
    ];

    /// <summary>p(x): over every place where each of the thresholds may have been passed.</summary>
    public static double Chance(GradeLink link, IReadOnlyList<GradeLook> looks, double x) =>
        Uneven.Sum(v =>
            v.Weight
            * Threshold(link, looks, x, link.SlightShift * Math.Exp(link.Unevenness * v.At), Math.Exp(link.SlightLogSpread), l => l.Slight)
            * Threshold(link, looks, x, link.FairShift * Math.Exp(link.Unevenness * v.At), Math.Exp(link.FairLogSpread), l => l.Fair)
        );

    /// <summary>p̃(x): nine tenths of it, and a tenth of what the window makes of it.</summary>
    public static double Mixed(GradeLink link, WindowPrior window, IReadOnlyList<GradeLook> looks, double x) =>
        0.9 * Chance(link, looks, x) + 0.1 * OfWindow(link, window, looks);

    public static double OfWindow(GradeLink link, WindowPrior window, IReadOnlyList<GradeLook> looks) =>
        GaussLegendreRule.Integrate(
            at => WindowDensity(window, at) * Chance(link, looks, at),
            window.Centre - 6 * window.Width,
            window.Centre + 3 * window.Width,
            512
        );

    /// <summary>Of ln T for a client of whom nothing is known.</summary>
    public static double WindowDensity(WindowPrior window, double x)
    {
        var spread = Math.Sqrt(window.ClientSpread * window.ClientSpread + window.PracticeSpread * window.PracticeSpread);
        var sum = 0.0;
        const double Step = 0.1;
        for (var b = -8.0; b <= 8; b += Step)
            sum += Step * Normal.PDF(0, 1, b) * Density(window.Distribution, x, window.Centre + spread * b, window.Sigma);
        return sum;
    }

    /// <summary>Of ln T.</summary>
    public static double Density(LifeDistribution distribution, double x, double centre, double tau)
    {
        var z = (x - centre) / tau;
        return distribution == LifeDistribution.Weibull ? Math.Exp(z - Math.Exp(z)) / tau : Normal.PDF(centre, tau, x);
    }

    private static double Threshold(
        GradeLink link,
        IReadOnlyList<GradeLook> looks,
        double x,
        double shift,
        double spread,
        Func<GradeLook, bool?> written
    )
    {
        var seen = looks.Where(look => written(look) is not null).ToList();
        double Passed(int j) =>
            j == 0 ? 0
            : j > seen.Count ? 1
            : Normal.CDF(0, 1, (Math.Log(seen[j - 1].WornDays) - x - shift) / spread);
        var sum = 0.0;
        // Passed after the look before this one and by this one; in the last place, after all of them.
        for (var place = 1; place <= seen.Count + 1; place++)
        {
            var chance = Passed(place) - Passed(place - 1);
            for (var l = 1; l <= seen.Count; l++)
            {
                var now = written(seen[l - 1])!.Value;
                var read = now == (l >= place) ? 1 - link.Misread : link.Misread;
                chance *= l == 1 ? read : (1 - link.Copied) * read + (now == written(seen[l - 2])!.Value ? link.Copied : 0);
            }
            sum += chance;
        }
        return sum;
    }
}
