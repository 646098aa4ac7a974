using CsCheck;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Gradient and Hessian against central differences of the value, on random rows of every kind.</summary>
public sealed class DerivativesTests
{
    private static readonly int[] Places = [1, -1, 2, -2];
    private static readonly double[] Weights = [8, -8, -1, 1];

    [Theory]
    [InlineData(LifeDistribution.Weibull, false, false, false)]
    [InlineData(LifeDistribution.LogNormal, false, false, false)]
    [InlineData(LifeDistribution.Weibull, true, false, false)]
    [InlineData(LifeDistribution.LogNormal, true, false, false)]
    [InlineData(LifeDistribution.Weibull, true, true, false)]
    [InlineData(LifeDistribution.LogNormal, true, true, false)]
    [InlineData(LifeDistribution.Weibull, false, true, false)]
    [InlineData(LifeDistribution.Weibull, false, false, true)]
    [InlineData(LifeDistribution.LogNormal, true, false, true)]
    [InlineData(LifeDistribution.Weibull, true, true, true)]
    [InlineData(LifeDistribution.LogNormal, false, true, true)]
    public void They_are_the_slopes_and_bends_of_the_value(LifeDistribution distribution, bool windows, bool clients, bool late) =>
        RandomRows
            .Of(distribution, windows, clients, late)
            .Sample(
                given =>
                {
                    var priors = new LifePriors(new(0.1, 2), [new(0, 0.35), NormalPrior.Flat], new(0, 0.4), clients ? 0.18 : 0);
                    var target = new LogPosterior(distribution, given.Rows, priors);
                    Check(target, given.Parameters, clients ? 2e-5 : 1e-6);
                },
                iter: 60
            );

    private static void Check(LogPosterior target, double[] parameters, double tolerance)
    {
        var size = target.Size;
        var (gradient, hessian) = (new double[size], new double[size * size]);
        target.Evaluate(parameters, gradient, hessian);
        for (var j = 0; j < size; j++)
        {
            var step = j == 2 ? 1e-6 : 1e-5;
            var around = Array.ConvertAll(Places, place => Look(target, parameters, j, place * step));
            var slope = Slope(around, step, look => look.Value);
            Assert.Equal(slope, gradient[j], tolerance * Size(gradient[j], around[0].Value));
            for (var k = 0; k < size; k++)
            {
                slope = Slope(around, step, look => look.Gradient[k]);
                Assert.Equal(slope, hessian[j * size + k], tolerance * Size(hessian[j * size + j], hessian[k * size + k]));
            }
        }
    }

    // Five points, of which the middle one has no weight: what is left out is of the fourth order, also where a row is steep. Abramowitz
    // and Stegun, Handbook of Mathematical Functions, table 25.2; from memory.
    private static double Slope(
        (double Value, double[] Gradient)[] around,
        double step,
        Func<(double Value, double[] Gradient), double> of
    ) => around.Zip(Weights, (look, weight) => weight * of(look)).Sum() / (12 * step);

    private static double Size(double one, double other) => 1 + Math.Abs(one) + Math.Abs(other);

    private static (double Value, double[] Gradient) Look(LogPosterior target, double[] parameters, int j, double step)
    {
        var moved = (double[])parameters.Clone();
        moved[j] += step;
        var gradient = new double[target.Size];
        return (target.Evaluate(moved, gradient, new double[target.Size * target.Size]), gradient);
    }
}
