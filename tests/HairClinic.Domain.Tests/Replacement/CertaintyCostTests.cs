using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>What certainty costs, against the same clients played day by day with a fixed seed (a simulation of its own, no source besides).</summary>
public sealed class CertaintyCostTests
{
    private const int Preparation = 14;
    private static readonly LeadTimePrior Lead = new(56, 77);
    private static readonly WindowPrior Lace = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly WindowPrior Thin = WindowPrior.FromWindow(LifeDistribution.Weibull, 45, 75);

    [Theory]
    [InlineData(1, 0.05)]
    [InlineData(2, 0.2)]
    public void A_rule_costs_what_playing_it_costs(int spares, double alpha)
    {
        var (window, seed) = spares == 1 ? (Lace, 3) : (Thin, 4);
        var option = Of(window).WithSpares(spares, alpha);

        var (gap, without, idle) = Play(window, option, seed);
        Assert.Equal(spares, option.LivesAhead);
        Assert.Equal(gap, option.Gap, 0.006);
        Assert.Equal(without, option.DaysWithoutPerYear, 0.15 + 0.1 * without);
        Assert.Equal(idle, option.IdleUnits, 0.01 + 0.06 * idle);
    }

    [Fact]
    public void Ordering_by_the_chance_keeps_to_the_chance_and_a_spare_costs_idle_units_and_buys_days()
    {
        var costs = Of(Lace);
        var (chance, spare) = (costs.WithChance(0.05), costs.WithSpares(1, 0.05));

        Assert.InRange(chance.Gap, 0.04, 0.05);
        Assert.Equal(Play(Lace, chance, 5).Gap, chance.Gap, 0.01);
        Assert.True(spare.DaysWithoutPerYear < chance.DaysWithoutPerYear / 4);
        Assert.True(spare.IdleUnits > chance.IdleUnits + 0.2);
        Assert.True(costs.WithChance(0.01).IdleUnits > costs.WithChance(0.1).IdleUnits);
    }

    [Fact]
    public void One_spare_is_proposed_and_two_where_a_unit_takes_longer_to_come_than_to_wear_out()
    {
        Assert.Equal(1, Of(Lace).Proposed);
        Assert.Equal(2, Of(Thin).Proposed);
    }

    private static CertaintyCost Of(WindowPrior window)
    {
        var population = PopulationParameters.FromPriors(window);
        var each = new RemainingLife(window.Centre, window.Width, window.Sigma, 0);
        return new(
            new ReorderInput(
                LifeDistribution.Weibull,
                ClientEffectNodes.For(population).Reduced(),
                [],
                [],
                LeadTimeTable.FromLeadTime(LeadTime.Learn(Lead, [], []), 0.05, 4, 700),
                new WorkshopWorkingDays(new LocalDate(2027, 3, 1), [], 1024),
                Preparation
            ),
            each
        );
    }

    // Clients one after another, each with an effect of their own: units are worn in turn and ordered as the option says.
    private static (double Gap, double Without, double Idle) Play(WindowPrior window, CertaintyOption option, int seed)
    {
        var dice = new Random(seed);
        var spread = Math.Sqrt(window.ClientFactor * window.ClientFactor + window.PracticeFactor * window.PracticeFactor);
        var (replaced, gaps, days, without, idle) = (0, 0, 0.0, 0.0, 0.0);
        for (var client = 0; client < 20_000; client++)
        {
            var effect = spread * Normal();
            // When each unit is ready; it is worn from when the one before it ended.
            var ready = new List<double>(new double[option.LivesAhead]);
            var worn = 0.0;
            for (var unit = 0; unit < 24; unit++)
            {
                var start = Math.Max(worn, ready[unit]);
                if (unit >= 8)
                {
                    (replaced, gaps) = (replaced + 1, gaps + (ready[unit] > worn ? 1 : 0));
                    (without, idle) = (without + start - worn, idle + Math.Max(0, worn - ready[unit]));
                }
                var end =
                    start + Math.Exp(window.Centre + window.Width * effect + window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble())));
                if (unit >= 8)
                    days += end - worn;
                ready.Add(start + option.WaitDays + Wait());
                worn = end;
            }
        }
        return (gaps / (double)replaced, 365 * without / days, idle / days);

        double Wait()
        {
            var wait = One() + Preparation;
            return Math.Min(CertaintyCost.LongestWaitDays, dice.NextDouble() < 0.05 ? wait + 4 + One() : wait);
        }

        // Student's t with four degrees of freedom: a normal over the root of a mean of four squares.
        double One() =>
            Math.Exp(Lead.Centre + Lead.Scale * Normal() / Math.Sqrt(-Math.Log((1 - dice.NextDouble()) * (1 - dice.NextDouble())) / 2));

        double Normal() => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
    }
}
