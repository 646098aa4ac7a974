using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Fits the lives of units, with the share of duds and what a repair does to a life.</summary>
/// <remarks>
/// The two are fitted by profile: for each value tried all else is fitted anew, on no more units than tell enough. Predictions are linear in
/// the share of duds, so its posterior mean over the values tried is what they want.
/// </remarks>
public static class UnitLifeFitter
{
    /// <summary>So many units tell of duds and repairs all that more of them would.</summary>
    public const int MostForProfile = 2000;

    private const double RepairRateSpread = 0.35;
    private const double DudPriorUnits = 12;
    private static readonly double[] DudShares = [0.01, 0.03, 0.07, 0.12, 0.18];
    private static readonly double[] RepairSteps = [-0.7, -0.35, 0, 0.35, 0.7];

    /// <param name="units">One row a unit.</param>
    /// <param name="columns">The covariates, a value a unit.</param>
    /// <param name="usualRepairRate">κ as it is assumed until the records say better.</param>
    public static UnitLifeFit Fit(
        LifeDistribution distribution,
        IReadOnlyList<UnitLifeRow> units,
        IReadOnlyList<CovariateColumn> columns,
        LifePriors priors,
        double usualRepairRate = 0
    )
    {
        var sample = SampleOf(units);
        var few = sample.Length == units.Count ? columns : [.. columns.Select(c => c with { Values = [.. sample.Select(i => c.Values[i])] })];
        var profile = new Profile(distribution, [.. sample.Select(i => units[i])], few, priors);
        var rate = profile.RepairRate(usualRepairRate);
        var (shares, other) = profile.DudSharesByKind(rate);
        var rows = Rows(units, columns, rate, kind => shares.GetValueOrDefault(kind, other));
        var ended = units.Count(u => u.Life.End != SpellEnd.After);
        return new UnitLifeFit(
            LifetimeFitter.Fit(distribution, rows, priors),
            rate,
            UnitCourses.RepairChanceFrom(units.Count(u => u.RepairedAt is not null && u.Life.End != SpellEnd.After), ended),
            shares,
            other
        );
    }

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
        Func<Guid, double> dudShare
    ) =>
        LifetimeFitRows.Create(
            [.. units.Select(u => u.ClockAt(rate).Read(u.Life))],
            columns,
            [.. units.Select(u => u.Place)],
            [.. units.Select(u => u.Client)],
            dudShares: [.. units.Select(u => dudShare(u.Kind))]
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
            var heights = Array.ConvertAll(RepairSteps, step => HeightAt(usual + step, step, DudShares[1]));
            var best = Array.IndexOf(heights, heights.Max());
            if (best == 0 || best == heights.Length - 1 || !double.IsFinite(heights[best]))
                return usual + (double.IsFinite(heights[best]) ? RepairSteps[best] : 0);
            // The top of the parabola through the best and its neighbours.
            var (left, top, right) = (heights[best - 1], heights[best], heights[best + 1]);
            var between = RepairSteps[best] - RepairSteps[best - 1];
            return usual + RepairSteps[best] + between * (left - right) / (2 * (left - 2 * top + right));
        }

        public (IReadOnlyDictionary<Guid, double> ByKind, double Other) DudSharesByKind(double rate)
        {
            var fits = Array.ConvertAll(DudShares, share => FitAt(rate, _ => share));
            var heights = fits.Select((fit, i) => fit.LogPosterior + DudPriorUnits * Math.Log(1 - DudShares[i])).ToArray();
            var unseen = MeanShare([.. DudShares.Select(share => DudPriorUnits * Math.Log(1 - share))]);
            if (!heights.Any(double.IsFinite))
                return (new Dictionary<Guid, double>(), unseen);
            var together = MeanShare(heights);
            var best = fits[Array.IndexOf(heights, heights.Where(double.IsFinite).Max())];
            double[] at = [.. best.Coefficients, best.LogScale];
            var shares = units
                .Where(u => u.Life.End != SpellEnd.After)
                .Select(u => u.Kind)
                .Distinct()
                .ToDictionary(kind => kind, kind => MeanShare([.. DudShares.Select(share => HeightOfKind(kind, share))]));
            return (shares, unseen);

            // Of one kind, all else as it was fitted.
            double HeightOfKind(Guid kind, double share) =>
                new LogPosterior(distribution, Rows(units, columns, rate, other => other == kind ? share : together), priors).ValueAt(at)
                + DudPriorUnits * Math.Log(1 - share);
        }

        private double HeightAt(double rate, double fromUsual, double share)
        {
            var exact = units.Count(u => u.RepairedAt < u.Life.Lower && u.Life.End == SpellEnd.At);
            return FitAt(rate, _ => share).LogPosterior - fromUsual * fromUsual / (2 * RepairRateSpread * RepairRateSpread) + exact * rate;
        }

        private LifetimeFit FitAt(double rate, Func<Guid, double> share) =>
            LifetimeFitter.Fit(distribution, Rows(units, columns, rate, share), priors);

        private static double MeanShare(double[] heights)
        {
            var top = heights.Where(double.IsFinite).DefaultIfEmpty(0).Max();
            var weights = Array.ConvertAll(heights, h => double.IsFinite(h) ? Math.Exp(h - top) : 0);
            return weights.Zip(DudShares, (w, share) => w * share).Sum() / weights.Sum();
        }
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
public sealed record UnitLifeFit(
    LifetimeFit Fit,
    double RepairRate,
    double RepairChance,
    IReadOnlyDictionary<Guid, double> DudShares,
    double OtherDudShare
);
