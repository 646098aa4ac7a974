using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;
using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Domain.Tests.Wear.Watch;

/// <summary>Ninety units of thirty clients from one workshop, half of two bases, drawn from the model; the last are still in wear.</summary>
internal sealed class WatchedPractice
{
    public const int Units = 90;
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly NormalPrior[] Effects = [LifePriors.UsualCoefficient, LifePriors.UsualCoefficient];

    private WatchedPractice(int seed, double practice, int declineFrom)
    {
        var dice = new Random(seed);
        var clients = Enumerable.Range(0, 30).Select(_ => Window.ClientFactor * Normal()).ToArray();
        Rows =
        [
            .. Enumerable.Range(0, Units).Select(order =>
            {
                var client = order % 30;
                var centre = Window.Centre + practice + Window.Width * clients[client] + (order >= declineFrom ? -0.288 : 0);
                var life = Math.Exp(centre + Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble())));
                // Looked at about every month, until it is worn out or today has come.
                var until = order < 60 ? 1000 : 40 + dice.Next(160);
                var sound = 0;
                while (true)
                {
                    var look = sound + dice.Next(26, 36);
                    if (look > until)
                        return Row(Spell.RightCensored(sound));
                    if (look >= life)
                        return Row(Spell.FromBounds(sound, look));
                    sound = look;
                }

                WatchedRow Row(Spell spell) => new(client, order, spell, Window.Place, [client % 2, 1 - client % 2]);
            }),
        ];
        Fitted = FitWith(int.MaxValue, LifePriors.UsualLogScale);
        Fit = WatchedFit.From(Fitted);

        double Normal() => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
    }

    public WatchedRow[] Rows { get; }

    public LifetimeFit Fitted { get; }

    public WatchedFit Fit { get; }

    public static (double[] Increments, WatchedPractice Practice) Scan(int seed, double practice, int declineFrom)
    {
        var drawn = new WatchedPractice(seed, practice, declineFrom);
        return (ShiftScan.Increments(drawn.Fit, drawn.Rows, Units), drawn);
    }

    /// <summary>Of the records, integrated over δ and β, if all from a place on are shifted; the scale is the fit's.</summary>
    public double LogEvidence(int first)
    {
        var fit = FitWith(first, new NormalPrior(Fitted.LogScale, 1e-5));
        return fit.LogPosterior + Math.Log(Matrix<double>.Build.DenseOfArray(fit.Covariance).Determinant()) / 2;
    }

    /// <summary>Of those rows only.</summary>
    /// <param name="cohort">A column more, with its prior: 1 from a place on.</param>
    public static LifetimeFit FitOf(IReadOnlyList<WatchedRow> rows, NormalPrior logScale, (int First, NormalPrior Prior)? cohort = null)
    {
        var columns = new List<CovariateColumn>
        {
            new("one base", [.. rows.Select(r => r.Covariates[0])]),
            new("other base", [.. rows.Select(r => r.Covariates[1])]),
        };
        if (cohort is { } named)
            columns.Add(new CovariateColumn("cohort", [.. rows.Select(r => r.Order >= named.First ? 1.0 : 0)]));
        var priors = Window.ToLifePriors(cohort is { } with ? [.. Effects, with.Prior] : Effects);
        return LifetimeFitter.Fit(
            LifeDistribution.Weibull,
            LifetimeFitRows.Create(
                [.. rows.Select(r => r.Spell)],
                columns,
                [.. rows.Select(r => r.Place)],
                [.. rows.Select(r => r.Client)]
            ),
            priors with
            {
                LogScale = logScale,
            }
        );
    }

    private LifetimeFit FitWith(int first, NormalPrior logScale) =>
        FitOf(
            [.. Rows.Select(r => r.Order >= first ? r with { Place = r.Place with { Offset = r.Place.Offset - 0.25 } } : r)],
            logScale
        );
}
