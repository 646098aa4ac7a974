using CsCheck;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Gradient and Hessian against central differences of the value, on random rows of every kind.</summary>
public sealed class DerivativesTests
{
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
                    var priors = new LifePriors(new(0.1, 2), [new(0, 0.35), LifePrior.Flat], new(0, 0.4), clients ? 0.18 : 0);
                    var target = new LogPosterior(distribution, given.Rows, priors);
                    Check(target, given.Parameters, clients ? 1e-4 : 1e-5);
                },
                iter: 60
            );

    private static void Check(LogPosterior target, double[] parameters, double tolerance)
    {
        var size = target.Size;
        var (gradient, hessian) = (new double[size], new double[size * size]);
        target.At(parameters, gradient, hessian);
        for (var j = 0; j < size; j++)
        {
            var step = j == 2 ? 1e-6 : 1e-5;
            var (above, below) = (Look(target, parameters, j, step), Look(target, parameters, j, -step));
            Assert.Equal((above.Value - below.Value) / (2 * step), gradient[j], tolerance * Size(gradient[j], above.Value));
            for (var k = 0; k < size; k++)
            {
                var slope = (above.Gradient[k] - below.Gradient[k]) / (2 * step);
                Assert.Equal(slope, hessian[j * size + k], tolerance * Size(hessian[j * size + j], hessian[k * size + k]));
            }
        }
    }

    private static double Size(double one, double other) => 1 + Math.Abs(one) + Math.Abs(other);

    private static (double Value, double[] Gradient) Look(LogPosterior target, double[] parameters, int j, double step)
    {
        var moved = (double[])parameters.Clone();
        moved[j] += step;
        var gradient = new double[target.Size];
        return (target.At(moved, gradient, new double[target.Size * target.Size]), gradient);
    }
}
