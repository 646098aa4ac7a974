using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>A practice's bonds or units, drawn from the model itself or all alike, and its log posterior by brute force.</summary>
/// <remarks>The integral over a client's effect is a sum over a dense grid, written down from the definition: nothing of the program's.</remarks>
internal sealed class SimulatedBook(WindowPrior window, IReadOnlyList<(Spell Spell, int Client)> bonds)
{
    public static readonly WindowPrior Holds = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);
    public static readonly WindowPrior Lives = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);

    private static readonly double SpreadOfScale = LifePriors.UsualLogScale.Spread;

    // Clients with the same bonds have the same integral.
    private readonly (Spell[] Spells, int Clients)[] _kinds =
    [
        .. bonds
            .GroupBy(b => b.Client, b => b.Spell)
            .GroupBy(c => string.Join(';', c.Select(s => $"{s.End} {s.Lower:R} {s.Upper:R}")))
            .Select(kind => (kind.First().ToArray(), kind.Count())),
    ];

    public LifePriors Priors { get; } = window.ToLifePriors([]);

    public LifetimeFitRows Rows { get; } =
        LifetimeFitRows.Create([.. bonds.Select(b => b.Spell)], [], [.. bonds.Select(_ => window.Place)], [.. bonds.Select(b => b.Client)]);

    public LifetimeFit Fit() => LifetimeFitter.Fit(window.Distribution, Rows, Priors);

    /// <summary>Bonds of a practice whose scale is eˢ times the window's; what has not lifted by <paramref name="takenDown"/> is still sound then.</summary>
    /// <param name="wholeDays">Known to the day; and so many of the lifts only within nine days.</param>
    public static SimulatedBook Draw(int seed, int clients, int each, double s, double takenDown, bool wholeDays, double intervals)
    {
        var dice = new Random(seed);
        var bonds = new List<(Spell, int)>();
        for (var client = 0; client < clients; client++)
        {
            var effect = Holds.ClientFactor * Normal(dice);
            for (var bond = 0; bond < each; bond++)
            {
                var noise = Math.Log(-Math.Log(1 - dice.NextDouble()));
                var held = Math.Exp(Holds.Centre + Holds.Width * effect + Math.Exp(s) * Holds.Sigma * noise);
                if (wholeDays)
                    held = Math.Max(1, Math.Ceiling(held));
                var from = 9 * Math.Ceiling(held / 9) - 9;
                var spell =
                    held > takenDown ? Spell.RightCensored(takenDown)
                    : dice.NextDouble() < intervals ? Spell.FromBounds(from, Math.Min(from + 9, takenDown))
                    : Spell.Exact(held);
                bonds.Add((spell, client));
            }
        }
        return new SimulatedBook(Holds, bonds);
    }

    public static SimulatedBook AllAlike(WindowPrior window, int clients, int each, Spell spell) =>
        new(window, [.. Enumerable.Range(0, clients * each).Select(i => (spell, i / each))]);

    /// <summary>Nineteen in twenty lifted after exactly 28 days, the others on any day.</summary>
    public static SimulatedBook NearlyAllAlike(int seed, int clients, int each)
    {
        var dice = new Random(seed);
        return new(
            Holds,
            [.. Enumerable.Range(0, clients * each).Select(i => (Spell.Exact(dice.NextDouble() < 0.95 ? 28 : dice.Next(20, 60)), i / each))]
        );
    }

    /// <summary>The same book with every known end as an interval of a day about it.</summary>
    public SimulatedBook ToTheDay() =>
        new(
            window,
            [.. bonds.Select(b => b.Spell.End == SpellEnd.At ? (Spell.FromBounds(b.Spell.Lower - 0.5, b.Spell.Lower + 0.5), b.Client) : b)]
        );

    /// <summary>The log-likelihood, clients' effects integrated out, plus the logarithm of both priors' densities.</summary>
    public double LogPosterior(double centre, double s)
    {
        var sum = LogDensity(centre, window.PracticeFactor) + LogDensity(s, SpreadOfScale);
        foreach (var (spells, clients) in _kinds)
            sum += clients * LogIntegral(spells, centre, s);
        return sum;
    }

    /// <summary>The highest log posterior at one s, over the centres between two; it is a concave function of them.</summary>
    public double Highest(double s, double low, double high, double precision)
    {
        var ratio = (Math.Sqrt(5) - 1) / 2;
        var (left, right) = (high - ratio * (high - low), low + ratio * (high - low));
        var (ofLeft, ofRight) = (LogPosterior(left, s), LogPosterior(right, s));
        while (high - low > precision)
        {
            if (ofLeft > ofRight)
            {
                (high, right, ofRight) = (right, left, ofLeft);
                ofLeft = LogPosterior(left = high - ratio * (high - low), s);
            }
            else
            {
                (low, left, ofLeft) = (left, right, ofRight);
                ofRight = LogPosterior(right = low + ratio * (high - low), s);
            }
        }
        return Math.Max(ofLeft, ofRight);
    }

    private double LogIntegral(Spell[] spells, double centre, double s)
    {
        var tau = Math.Exp(s) * window.Sigma;
        // A twentieth of the distance over which a row's likelihood turns, and of the clients' own spread.
        var step = 1 / (20 * (window.Width / tau + 1 / window.ClientFactor));
        var nodes = (int)(18 * window.ClientFactor / step);
        var (heights, top) = (new double[nodes], double.NegativeInfinity);
        var logs = Array.ConvertAll(spells, spell => (Lower: Math.Log(spell.Lower), Upper: Math.Log(spell.Upper)));
        for (var k = 0; k < nodes; k++)
        {
            var b = step * k - 9 * window.ClientFactor;
            var eta = window.Centre + window.Width * (centre + b);
            heights[k] = LogDensity(b, window.ClientFactor);
            for (var i = 0; i < spells.Length; i++)
                heights[k] += LogLikelihood(spells[i].End, (logs[i].Lower - eta) / tau, (logs[i].Upper - eta) / tau, tau, logs[i].Lower);
            top = Math.Max(top, heights[k]);
        }
        return top + Math.Log(step * heights.Sum(h => Math.Exp(h - top)));
    }

    private static double LogLikelihood(SpellEnd end, double lower, double upper, double tau, double logTime)
    {
        var hazard = Math.Exp(lower);
        if (end == SpellEnd.After || double.IsInfinity(hazard))
            return -hazard;
        if (end == SpellEnd.At)
            return lower - hazard - Math.Log(tau) - logTime;
        var within = Math.Exp(upper) - hazard;
        return -hazard + (within < 1e-8 ? Math.Log(within) : Math.Log(1 - Math.Exp(-within)));
    }

    private static double LogDensity(double x, double spread) => -x * x / (2 * spread * spread) - Math.Log(spread * Math.Sqrt(2 * Math.PI));

    private static double Normal(Random dice) =>
        Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
