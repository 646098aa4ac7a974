using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Fits the lives of units, with the share of duds, what a repair does to a life, and how much bases and workshops differ.</summary>
/// <remarks>
/// These are fitted by profile: for each value tried all else is fitted anew, on no more units than tell enough. Predictions are linear in
/// the share of duds, so its posterior mean over the values tried is what they want. How much shorter a dud lasts is told from the rows with
/// all else as the best of those fits has it.
/// </remarks>
public static class UnitLifeFitter
{
    /// <summary>So many units tell of duds and repairs all that more of them would.</summary>
    public const int MostForProfile = 2000;

    private const double RepairRateSpread = 0.35;
    private const double DudPriorUnits = 12;

    /// <summary>The share of duds before any was seen.</summary>
    internal const double AssumedDudShare = 0.03;

    private static readonly double[] DudShares = [0, 0.01, 0.03, 0.07, 0.12, 0.18];
    private static readonly double[] EffectSpreads = [0.05, 0.1, 0.2, 0.35];

    // Practices' rows are mostly about right: a spread of 0.35 is once in twenty exceeded (an exponential prior).
    private const double UsualEffectSpread = 0.12;
    private static readonly double[] RepairSteps = [-0.7, -0.35, 0, 0.35, 0.7];

    /// <param name="units">One row a unit.</param>
    /// <param name="columns">The covariates, a value a unit.</param>
    /// <param name="usualRepairRate">κ as it is assumed until the records say better.</param>
    /// <param name="alike">
    /// The places of columns whose effects differ by one spread, which is learnt: practices whose windows are right for every base and
    /// workshop are not to be doubted as much as others for ever. None: each has its own prior.
    /// </param>
    public static UnitLifeFit Fit(
        LifeDistribution distribution,
        IReadOnlyList<UnitLifeRow> units,
        IReadOnlyList<CovariateColumn> columns,
        LifePriors priors,
        double usualRepairRate = 0,
        params IReadOnlyList<int> alike
    )
    {
        var sample = SampleOf(units);
        UnitLifeRow[] few = [.. sample.Select(i => units[i])];
        CovariateColumn[] fewValues = [.. columns.Select(c => c with { Values = [.. sample.Select(i => c.Values[i])] })];
        var profile = new Profile(distribution, few, fewValues, priors);
        var rate = profile.RepairRate(usualRepairRate);
        var spread = profile.EffectSpread(rate, alike);
        priors = WithSpread(priors, alike, spread);
        var (shares, other, drop) = new Profile(distribution, few, fewValues, priors).Duds(rate);
        var rows = Rows(units, columns, rate, kind => shares.GetValueOrDefault(kind, other), drop);
        var ended = units.Count(u => u.Life.End != SpellEnd.After);
        return new UnitLifeFit(
            LifetimeFitter.Fit(distribution, rows, priors),
            rate,
            UnitCourses.RepairChanceFrom(units.Count(u => u.RepairedAt is not null && u.Life.End != SpellEnd.After), ended),
            shares,
            other,
            drop,
            spread
        );
    }

    /// <summary>Another fit of units whose repairs and effects are learnt, with duds as they were assumed before any was seen.</summary>
    /// <param name="rate">κ as it was learnt.</param>
    /// <param name="spread">As it was learnt, of the effects of the columns <paramref name="alike"/>.</param>
    public static LifetimeFit FitWithAssumedDuds(
        LifeDistribution distribution,
        IReadOnlyList<UnitLifeRow> units,
        IReadOnlyList<CovariateColumn> columns,
        LifePriors priors,
        double rate,
        double spread,
        params IReadOnlyList<int> alike
    ) =>
        LifetimeFitter.Fit(
            distribution,
            Rows(units, columns, rate, _ => AssumedDudShare, DudDrop.Unlearnt),
            WithSpread(priors, alike, spread)
        );

    private static LifePriors WithSpread(LifePriors priors, IReadOnlyList<int> alike, double spread) =>
        priors with
        {
            Coefficients = [.. priors.Coefficients.Select((c, i) => alike.Contains(i) ? c with { Spread = spread } : c)],
        };

    // Whole clients, in the order they come.
    private static int[] SampleOf(IReadOnlyList<UnitLifeRow> units)
    {
        if (units.Count <= MostForProfile)
            return [.. Enumerable.Range(0, units.Count)];
        var taken = new List<int>();
        foreach (var own in Enumerable.Range(0, units.Count).GroupBy(i => units[i].Client < 0 ? ~i : units[i].Client))
        {
            if (taken.Count >= MostForProfile)
                break;
            taken.AddRange(own);
        }
        return [.. taken.Order()];
    }

    private static LifetimeFitRows Rows(
        IReadOnlyList<UnitLifeRow> units,
        IReadOnlyList<CovariateColumn> columns,
        double rate,
        Func<Guid, double> dudShare,
        DudDrop drop
    ) =>
        LifetimeFitRows.Create(
            [.. units.Select(u => u.ClockAt(rate).Read(u.Life))],
            columns,
            [.. units.Select(u => u.Place)],
            [.. units.Select(u => u.Client)],
            dudShares: [.. units.Select(u => dudShare(u.Kind))],
            dudDrop: drop
        );

    private sealed class Profile(
        LifeDistribution distribution,
        IReadOnlyList<UnitLifeRow> units,
        IReadOnlyList<CovariateColumn> columns,
        LifePriors priors
    )
    {
        // What tells nothing of repairs leaves κ at its prior's mean.
        public double RepairRate(double usual)
        {
            if (!units.Any(u => u.RepairedAt is { } at && (u.Life.End != SpellEnd.After || u.Life.Lower > at)))
                return usual;
            var heights = Array.ConvertAll(RepairSteps, step => HeightAt(usual + step, step, AssumedDudShare));
            var best = Array.IndexOf(heights, heights.Max());
            if (best == 0 || best == heights.Length - 1 || !double.IsFinite(heights[best]))
                return usual + (double.IsFinite(heights[best]) ? RepairSteps[best] : 0);
            // The top of the parabola through the best and its neighbours.
            var (left, top, right) = (heights[best - 1], heights[best], heights[best + 1]);
            var between = RepairSteps[best] - RepairSteps[best - 1];
            return usual + RepairSteps[best] + between * (left - right) / (2 * (left - 2 * top + right));
        }

        public (IReadOnlyDictionary<Guid, double> ByKind, double Other, DudDrop Drop) Duds(double rate)
        {
            var fits = Array.ConvertAll(DudShares, share => FitAt(rate, share));
            var heights = fits.Select((fit, i) => fit.LogPosterior + LogPriorOf(DudShares[i])).ToArray();
            var unseen = MeanShare(LogPriorOf);
            if (!heights.Any(double.IsFinite))
                return (new Dictionary<Guid, double>(), unseen, DudDrop.Unlearnt);
            var best = fits[Array.IndexOf(heights, heights.Where(double.IsFinite).Max())];
            double[] at = [.. best.Coefficients, best.LogScale];
            var drop = DudDrop.FromTried(
                Weights([
                    .. DudDrop.Tried.Select(t => t.LogPrior + LogSum([.. DudShares.Select(share => HeightOf(_ => share, share, t.Drop))])),
                ])
            );
            var together = MeanShare(share => HeightOf(_ => share, share, drop));
            var shares = units
                .Where(u => u.Life.End != SpellEnd.After)
                .Select(u => u.Kind)
                .Distinct()
                .ToDictionary(kind => kind, kind => MeanShare(share => HeightOf(other => other == kind ? share : together, share, drop)));
            return (shares, unseen, drop);

            // All else as it was fitted.
            double HeightOf(Func<Guid, double> shareOf, double tried, DudDrop drop) =>
                new LogPosterior(distribution, Rows(units, columns, rate, shareOf, drop), priors).ValueAt(at) + LogPriorOf(tried);
        }

        // The mean of the variances, each as likely as the rows are under it (Laplace) and as it is assumed to be.
        public double EffectSpread(double rate, IReadOnlyList<int> alike)
        {
            if (alike.Count == 0)
                return LifePriors.UsualCoefficient.Spread;
            var rows = Rows(units, columns, rate, _ => AssumedDudShare, DudDrop.Unlearnt);
            var weights = Weights(Array.ConvertAll(EffectSpreads, s => EvidenceOf(s) - s / UsualEffectSpread));
            return weights.Sum() == 0
                ? LifePriors.UsualCoefficient.Spread
                : Math.Sqrt(weights.Zip(EffectSpreads, (w, s) => w * s * s).Sum() / weights.Sum());

            double EvidenceOf(double spread) => LifetimeFitter.Fit(distribution, rows, WithSpread(priors, alike, spread)).LogEvidence;
        }

        private double HeightAt(double rate, double fromUsual, double share)
        {
            var exact = units.Count(u => u.RepairedAt < u.Life.Lower && u.Life.End == SpellEnd.At);
            return FitAt(rate, share).LogPosterior - fromUsual * fromUsual / (2 * RepairRateSpread * RepairRateSpread) + exact * rate;
        }

        private LifetimeFit FitAt(double rate, double share) =>
            LifetimeFitter.Fit(distribution, Rows(units, columns, rate, _ => share, DudDrop.Unlearnt), priors);

        private static double LogPriorOf(double share) => DudPriorUnits * Math.Log(1 - share);

        private static double MeanShare(Func<double, double> height)
        {
            var weights = Weights(Array.ConvertAll(DudShares, share => height(share)));
            return weights.Zip(DudShares, (w, share) => w * share).Sum() / weights.Sum();
        }

        private static double[] Weights(double[] heights)
        {
            var top = heights.Where(double.IsFinite).DefaultIfEmpty(0).Max();
            return Array.ConvertAll(heights, h => double.IsFinite(h) ? Math.Exp(h - top) : 0);
        }

        private static double LogSum(double[] heights) =>
            heights.Where(double.IsFinite).DefaultIfEmpty(double.NegativeInfinity).Max() + Math.Log(Weights(heights).Sum());
    }
}

/// <summary>One unit as the fit of lives reads it.</summary>
/// <param name="Life">In worn days.</param>
/// <param name="RepairedAt">Worn days at its first repair; null where it never was.</param>
/// <param name="Kind">The kind of unit: duds are counted by it.</param>
/// <param name="Client">A number for whose it is; below 0 for nobody's.</param>
public sealed record UnitLifeRow(Spell Life, double? RepairedAt, Guid Kind, RowLocationScale Place, int Client)
{
    public RepairClock ClockAt(double rate) => RepairedAt is { } at ? new RepairClock(at, rate) : default;
}

/// <summary>What was learnt of lives.</summary>
/// <param name="RepairRate">κ.</param>
/// <param name="RepairChance">ρ.</param>
/// <param name="DudShares">By kind of unit, where one of it ended.</param>
/// <param name="OtherDudShare">Of kinds of which nothing is known.</param>
/// <param name="DudDrop">How much shorter a dud lasts.</param>
/// <param name="EffectSpread">Of the effects of bases and workshops, over those there are: how much they differ.</param>
public sealed record UnitLifeFit(
    LifetimeFit Fit,
    double RepairRate,
    double RepairChance,
    IReadOnlyDictionary<Guid, double> DudShares,
    double OtherDudShare,
    DudDrop DudDrop,
    double EffectSpread
);
