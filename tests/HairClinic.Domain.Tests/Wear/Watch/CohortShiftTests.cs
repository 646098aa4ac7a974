using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Domain.Tests.Wear.Watch;

public sealed class CohortShiftTests
{
    private static readonly RowLocationScale Place = new(5.4, 0.11, 0.4);
    private static readonly WatchedFit Fit = new(LifeDistribution.Weibull, [0.02, 0], [1e-4, 0, 0, 1e-4], 0.2);

    [Fact]
    public void Before_its_units_say_anything_it_is_what_is_assumed()
    {
        var shift = CohortShift.Learn(Fit, [new WatchedRow(0, 0, Spell.RightCensored(0), Place, [])], 0);

        Assert.Equal(-0.14, shift.Mean, 1e-9);
        Assert.Equal(0.04, shift.Variance, 1e-9);
    }

    // A fine grid over γ and, within it, over each client's b.
    [Fact]
    public void It_agrees_with_a_fine_grid()
    {
        // Two clients; the first wore a unit that is not of the cohort, and two that are.
        (int Client, int Order, Spell Life)[] units =
        [
            (0, -1, Spell.Exact(230)),
            (0, 3, Spell.FromBounds(150, 180)),
            (0, 5, Spell.RightCensored(90)),
            (1, 4, Spell.Exact(170)),
        ];
        var shift = CohortShift.Learn(Fit, units.Select(u => new WatchedRow(u.Client, u.Order, u.Life, Place, [])), 3);

        var (weight, first, second) = (0.0, 0.0, 0.0);
        for (var gamma = -1.14; gamma < 0.86; gamma += 0.004)
        {
            var share = Math.Exp(-Math.Pow((gamma + 0.14) / 0.2, 2) / 2) * OfClient(0, gamma) * OfClient(1, gamma);
            (weight, first, second) = (weight + share, first + share * gamma, second + share * gamma * gamma);
        }
        var mean = first / weight;
        Assert.Equal(mean, shift.Mean, 1e-5);
        Assert.Equal(second / weight - mean * mean, shift.Variance, 1e-5);

        double OfClient(int client, double gamma)
        {
            var sum = 0.0;
            for (var b = -1.4; b < 1.4; b += 0.004)
            {
                var product = Math.Exp(-b * b / (2 * 0.2 * 0.2));
                foreach (var (_, order, life) in units.Where(u => u.Client == client))
                    product *= Likelihood(life, 5.4 + 0.4 * (0.02 + b) + (order >= 3 ? gamma : 0));
                sum += product;
            }
            return sum;
        }
    }

    /// <remarks>
    /// How far the two ways are apart: given the rest as it stands, and as a covariate of the joint fit, where the rest is in doubt and the
    /// cohort's units tell of their clients and of the scale too. Means within 0.02, the joint one's error larger by up to a quarter.
    /// </remarks>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void As_a_covariate_of_the_joint_fit_it_is_nearly_the_same(int seed)
    {
        const int First = 50;
        var (_, practice) = WatchedPractice.Scan(seed, practice: 0.02, declineFrom: First);
        var rest = WatchedPractice.FitOf([.. practice.Rows.Where(r => r.Order < First)], LifePriors.UsualLogScale);

        var given = CohortShift.Learn(WatchedFit.From(rest), practice.Rows, First);
        var joint = WatchedPractice.FitOf(practice.Rows, LifePriors.UsualLogScale, (First, CohortShift.Prior));

        Assert.InRange(given.Mean, -0.288 - 0.08, -0.288 + 0.08);
        Assert.Equal(joint.Coefficients[^1], given.Mean, 0.02);
        Assert.InRange(joint.StdError(3) / Math.Sqrt(given.Variance), 0.95, 1.25);
    }

    private static double Likelihood(Spell life, double centre)
    {
        return life.End switch
        {
            SpellEnd.At => Math.Exp(Z(life.Lower) - Math.Exp(Z(life.Lower))),
            SpellEnd.After => Survival(life.Lower),
            _ => Survival(life.Lower) - Survival(life.Upper),
        };

        double Z(double days) => (Math.Log(days) - centre) / 0.11;
        double Survival(double days) => Math.Exp(-Math.Exp(Z(days)));
    }
}
