using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>
/// Duds and repairs found again in units drawn with a fixed seed by another story than the model's: a dud lives 45 % of its life, a repair
/// leaves 60 % of what was left (the misspecified practices of the benchmark `worlds`). Likelihoods against brute force.
/// </summary>
public sealed class UnitLifeFitterTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly Guid Lace = new("11111111-1111-1111-1111-111111111111");
    private static readonly Guid Mono = new("22222222-2222-2222-2222-222222222222");

    [Fact]
    public void A_practice_with_duds_and_repairs_is_told_of_both()
    {
        var units = Draw(new Random(3), clients: 150, each: 4, duds: 0.15, repairs: 0.4, rest: 0.6);
        var fit = Fit(units);

        Assert.Null(fit.Fit.Missing);
        Assert.InRange(fit.DudShares[Lace], 0.09, 0.18);
        Assert.InRange(fit.RepairRate, 0.3, 0.75);
        Assert.InRange(fit.RepairChance, 0.2, 0.5);
    }

    [Fact]
    public void A_practice_without_either_is_told_of_next_to_none()
    {
        var fit = Fit(Draw(new Random(4), clients: 150, each: 4, duds: 0, repairs: 0, rest: 1));

        Assert.InRange(fit.DudShares[Lace], 0, 0.02);
        Assert.Equal(0, fit.RepairRate);
        Assert.InRange(fit.RepairChance, 0, 0.01);
        // Of a kind of which nothing ended: the mean of what is assumed, (1 − π)¹² over the shares that are tried.
        Assert.Equal(0.031, fit.OtherDudShare, 0.001);
    }

    // ln 0.45 = −0.80, ln 0.7 = −0.36.
    [Theory]
    [InlineData(0.45, 0.65, 0.9)]
    [InlineData(0.7, 0.25, 0.5)]
    public void How_much_shorter_duds_last_is_learnt(double life, double least, double most)
    {
        var fit = Fit(Draw(new Random(3), clients: 150, each: 4, duds: 0.15, repairs: 0, rest: 1, dudLife: life));

        Assert.InRange(fit.DudDrop.Usual, least, most);
        Assert.InRange(fit.DudDrop.Spread, 0.2, 0.28);
    }

    [Fact]
    public void Where_nothing_ended_duds_and_workshops_are_as_assumed()
    {
        List<UnitLifeRow> units =
        [
            .. Draw(new Random(3), clients: 10, each: 1, duds: 0, repairs: 0, rest: 1)
                .Select(u => u with { Life = Spell.RightCensored(30) }),
        ];
        var fit = FitOfWorkshops(units, 2);

        // Of N(0.5, 0.3²), as far as five values of its centre give its spread.
        Assert.Equal(0.5, fit.DudDrop.Usual, 0.02);
        Assert.Equal(0.29, fit.DudDrop.Spread, 0.01);
        // The four spreads that are tried, exponentially as likely.
        double[] spreads = [0.05, 0.1, 0.2, 0.35];
        var likely = Array.ConvertAll(spreads, s => Math.Exp(-s / 0.12));
        Assert.Equal(Math.Sqrt(spreads.Zip(likely, (s, l) => s * s * l).Sum() / likely.Sum()), fit.EffectSpread, 0.01);
    }

    [Theory]
    [InlineData(0, 0, 0.16)]
    [InlineData(0.4, 0.2, 0.35)]
    public void How_much_workshops_differ_is_learnt(double apart, double least, double most)
    {
        const int Workshops = 6;
        double[] effects = [.. Enumerable.Range(0, Workshops).Select(w => apart * (w % 2 == 0 ? 1 : -1))];
        var units = Draw(new Random(9), clients: 120, each: 4, duds: 0, repairs: 0, rest: 1)
            .Select(u => u with { Life = Spell.FromBounds(u.Life.Lower * Factor(u), u.Life.Upper * Factor(u)) })
            .ToList();
        Assert.InRange(FitOfWorkshops(units, Workshops).EffectSpread, least, most);

        double Factor(UnitLifeRow unit) => Math.Exp(effects[unit.Client % Workshops]);
    }

    [Fact]
    public void Duds_are_a_share_of_each_kind()
    {
        var bad = Draw(new Random(5), clients: 100, each: 4, duds: 0.18, repairs: 0, rest: 1);
        var good = Draw(new Random(6), clients: 100, each: 4, duds: 0, repairs: 0, rest: 1)
            .Select(u => u with { Kind = Mono, Client = u.Client + 1000 });
        var fit = Fit([.. bad, .. good]);

        Assert.True(fit.DudShares[Lace] > 0.08);
        Assert.True(fit.DudShares[Mono] < 0.03);
    }

    // Over the client's effect and over what a dud lacks, N(0.5, 0.3²) cut to (0, 1.5), by fine sums.
    [Theory]
    [InlineData(150, double.PositiveInfinity)]
    [InlineData(90, 130)]
    [InlineData(0, 120)]
    [InlineData(110, 110)]
    public void A_unit_that_may_be_a_dud_counts_as_the_integral_over_what_a_dud_lacks(double lower, double upper)
    {
        var spell = Spell.FromBounds(lower, upper);
        var (sum, total) = (0.0, 0.0);
        for (var b = -6.0; b <= 6; b += 0.02)
        {
            var centre = Window.Centre + Window.ClientSpread * b;
            var (lacking, weights) = (0.0, 0.0);
            for (var d = 0.005; d < 1.5; d += 0.01)
            {
                var weight = Math.Exp(-(d - 0.5) * (d - 0.5) / 0.18);
                weights += weight;
                lacking += weight * Likelihood(spell, centre - d);
            }
            total += Math.Exp(-b * b / 2);
            sum += Math.Exp(-b * b / 2) * (0.88 * Likelihood(spell, centre) + 0.12 * lacking / weights);
        }

        Assert.Equal(Math.Log(sum / total), Of(spell).Evaluate([0, 0], new double[2], new double[4]), 0.03);
    }

    [Theory]
    [InlineData(150, double.PositiveInfinity)]
    [InlineData(90, 130)]
    [InlineData(0, 120)]
    [InlineData(110, 110)]
    public void Its_derivatives_are_the_differences_of_its_values(double lower, double upper)
    {
        const double H = 1e-4;
        var posterior = Of(Spell.FromBounds(lower, upper));
        var (gradient, hessian) = (new double[2], new double[4]);
        posterior.Evaluate([-0.1, -0.2], gradient, hessian);

        for (var j = 0; j < 2; j++)
        {
            var (up, down) = (At(j, H), At(j, -H));
            Assert.Equal((up.Value - down.Value) / (2 * H), gradient[j], 1e-4 * (1 + Math.Abs(gradient[j])));
            for (var k = 0; k < 2; k++)
                Assert.Equal((up.Gradient[k] - down.Gradient[k]) / (2 * H), hessian[2 * j + k], 1e-3 * (1 + Math.Abs(hessian[2 * j + k])));
        }

        (double Value, double[] Gradient) At(int j, double change)
        {
            double[] at = [-0.1, -0.2];
            at[j] += change;
            var slopes = new double[2];
            return (posterior.Evaluate(at, slopes, new double[4]), slopes);
        }
    }

    private static LogPosterior Of(Spell spell) =>
        new(
            LifeDistribution.Weibull,
            LifetimeFitRows.Create([spell], [], [Window.Place], [0], dudShares: [0.12]),
            LifePriors.Flat(0) with
            {
                ClientSpread = Window.ClientFactor,
            }
        );

    private static double Likelihood(Spell spell, double centre)
    {
        double Z(double t) => (Math.Log(t) - centre) / Window.Sigma;
        double S(double t) =>
            t == 0 ? 1
            : double.IsInfinity(t) ? 0
            : Math.Exp(-Math.Exp(Z(t)));
        return spell.End == SpellEnd.At
            ? Math.Exp(Z(spell.Lower) - Math.Exp(Z(spell.Lower))) / (Window.Sigma * spell.Lower)
            : S(spell.Lower) - S(spell.Upper);
    }

    // Each client's units come from one of so many workshops.
    private static UnitLifeFit FitOfWorkshops(List<UnitLifeRow> units, int workshops)
    {
        var columns = Enumerable
            .Range(0, workshops)
            .Select(w => new CovariateColumn($"workshop {w}", [.. units.Select(u => u.Client % workshops == w ? 1.0 : 0)]))
            .ToList();
        var priors = Window.ToLifePriors([.. columns.Select(_ => LifePriors.UsualCoefficient)]);
        return UnitLifeFitter.Fit(LifeDistribution.Weibull, units, columns, priors, alike: [.. Enumerable.Range(0, workshops)]);
    }

    private static UnitLifeFit Fit(IReadOnlyList<UnitLifeRow> units) =>
        UnitLifeFitter.Fit(LifeDistribution.Weibull, units, [], Window.ToLifePriors([]));

    // Looked at every 32 worn days; the last unit of each client is still worn.
    private static List<UnitLifeRow> Draw(
        Random dice,
        int clients,
        int each,
        double duds,
        double repairs,
        double rest,
        double dudLife = 0.45
    )
    {
        var units = new List<UnitLifeRow>();
        for (var client = 0; client < clients; client++)
        {
            var effect = Window.ClientSpread * Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
            for (var unit = 0; unit < each; unit++)
            {
                var life = Math.Exp(Window.Centre + effect + Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble())));
                if (dice.NextDouble() < duds)
                    life *= dudLife;
                var at = dice.NextDouble() < repairs ? Math.Round(life * (0.35 + 0.4 * dice.NextDouble())) : (double?)null;
                if (at is { } repaired)
                    life = repaired + rest * (life - repaired);
                var seen = unit == each - 1 ? 32 * dice.Next(6) : double.PositiveInfinity;
                var sound = Math.Min(32 * Math.Floor(life / 32), seen);
                units.Add(
                    new UnitLifeRow(
                        life < seen ? Spell.FromBounds(sound, sound + 32) : Spell.RightCensored(sound),
                        at < Math.Min(life, seen) ? at : null,
                        Lace,
                        Window.Place,
                        client
                    )
                );
            }
        }
        return units;
    }
}
