using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Spells looked at only from some time on, as a unit's life is with another covariate from its repair on.</summary>
public sealed class LateEntryTests
{
    // Invented: ten lives, five of them repaired on the way. Time, ended, entered, repaired.
    private static readonly double[][] Lives =
    [
        [150, 1, 0, 0],
        [212, 1, 0, 0],
        [190, 0, 0, 0],
        [240, 1, 0, 0],
        [175, 1, 0, 0],
        [90, 0, 0, 0],
        [230, 1, 120, 1],
        [260, 0, 120, 1],
        [205, 1, 150, 1],
        [120, 0, 0, 0],
        [280, 1, 90, 1],
        [90, 1, 0, 0],
        [222, 0, 0, 0],
        [190, 1, 100, 1],
        [247, 1, 170, 1],
        [170, 0, 0, 0],
        [231, 1, 120, 1],
        [120, 0, 0, 0],
        [265, 1, 150, 1],
        [150, 0, 0, 0],
    ];

    private static Spell[] Spells => [.. Lives.Select(life => life[1] == 1 ? Spell.Exact(life[0]) : Spell.RightCensored(life[0]))];

    private static double[] Entered => [.. Lives.Select(life => life[2])];

    private static CovariateColumn Repaired => new("repaired", [.. Lives.Select(life => life[3])]);

    // R 4.2.2's optim and nlm on the likelihood written down from its definition, apart from survreg, which knows no late entry.
    [Theory]
    [InlineData(LifeDistribution.Weibull, 5.382859083, 0.140401236, -1.790310215, -65.5280836026)]
    [InlineData(LifeDistribution.LogNormal, 5.261898141, 0.213443777, -1.307531935, -67.9406879865)]
    public void It_is_the_highest_point_that_a_general_optimiser_finds(
        LifeDistribution distribution,
        double intercept,
        double repaired,
        double logScale,
        double logLikelihood
    )
    {
        var fit = LifetimeFitter.Fit(distribution, LifetimeFitRows.Create(Spells, [Repaired], entered: Entered), LifePriors.Flat(1));

        Assert.Equal(intercept, fit.Coefficients[0], 2e-6);
        Assert.Equal(repaired, fit.Coefficients[1], 2e-6);
        Assert.Equal(logScale, fit.LogScale, 2e-6);
        Assert.Equal(logLikelihood, fit.LogLikelihood, 1e-8);
        Assert.Equal((20, 12), (fit.Count, fit.Ended));
    }

    // An exponential life has no memory: the mean is the time looked at over the ends seen, whenever one began to look.
    [Fact]
    public void Of_an_exponential_life_it_is_time_looked_at_over_ends()
    {
        var sure = new LifePriors(NormalPrior.Flat, [], new(0, 1e-8));
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(Spells, [], entered: Entered), sure);
        var exposure = Lives.Sum(life => life[0] - life[2]);

        Assert.Equal(exposure / 12, Math.Exp(fit.Coefficients[0]), 1e-6);
        Assert.Equal(-12 * Math.Log(exposure / 12) - 12, fit.LogLikelihood, 1e-6);
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull, false)]
    [InlineData(LifeDistribution.LogNormal, true)]
    public void A_life_told_in_two_stretches_alike_is_the_life_told_whole(LifeDistribution distribution, bool clients)
    {
        Spell[] whole = [Spell.FromBounds(130, 160), Spell.Exact(200), Spell.RightCensored(180), Spell.FromBounds(170, 210)];
        Spell[] parts =
        [
            Spell.RightCensored(100),
            Spell.FromBounds(130, 160),
            Spell.Exact(200),
            Spell.RightCensored(90),
            Spell.RightCensored(180),
            Spell.FromBounds(170, 210),
        ];
        var priors = LifePriors.Flat(0) with
        {
            Intercept = new(5, 1),
            LogScale = LifePriors.UsualLogScale,
            ClientSpread = clients ? 0.2 : 0,
        };
        var once = LifetimeFitRows.Create(whole, [], [], clients ? [0, -1, 0, -1] : []);
        var twice = LifetimeFitRows.Create(parts, [], [], clients ? [0, 0, -1, 0, 0, -1] : [], [0, 100, 0, 0, 90, 0]);
        var (one, other) = (LifetimeFitter.Fit(distribution, once, priors), LifetimeFitter.Fit(distribution, twice, priors));

        Assert.Equal(one.LogPosterior, other.LogPosterior, 1e-9);
        Assert.Equal(one.Coefficients[0], other.Coefficients[0], 1e-7);
        Assert.Equal(one.StdError(0), other.StdError(0), 1e-7);
    }

    // The integral over the client's effect, from its definition on a fine grid.
    [Fact]
    public void A_clients_effect_sees_what_was_known_on_entering()
    {
        Spell[] spells = [Spell.Exact(150), Spell.RightCensored(100), Spell.FromBounds(160, 190)];
        double[] entered = [0, 0, 100];
        var rows = LifetimeFitRows.Create(spells, [new("repaired", [0, 0, 1])], [], new int[3], entered);
        var target = new LogPosterior(LifeDistribution.Weibull, rows, LifePriors.Flat(1) with { ClientSpread = 0.2 });
        // Without places columns are kept less their mean: half, over the four rows as they are summed.
        var value = target.Evaluate([5 + 0.3 / 2, 0.3, Math.Log(0.15)], new double[3], new double[9]);

        var sum = 0.0;
        for (var b = -1.0; b <= 1; b += 1e-4)
        {
            double Lasts(double days, double repaired) => 1 - Weibull.CDF(1 / 0.15, Math.Exp(5 + 0.3 * repaired + b), days);
            var told = Weibull.PDF(1 / 0.15, Math.Exp(5 + b), 150) * Lasts(100, 0) * (Lasts(160, 1) - Lasts(190, 1)) / Lasts(100, 1);
            sum += 1e-4 * Normal.PDF(0, 0.2, b) * told;
        }
        Assert.Equal(Math.Log(sum), value, 1e-6);
    }

    [Fact]
    public void What_is_last_seen_on_entering_tells_nothing_and_none_is_entered_after_its_end()
    {
        var rows = LifetimeFitRows.Create([Spell.RightCensored(90), Spell.Exact(120)], [], entered: [90, 60]);

        Assert.Equal((1, 1), (rows.Count, rows.Ended));
        Assert.Throws<ArgumentException>(() => LifetimeFitRows.Create([Spell.Exact(120)], [], entered: [121]));
        Assert.Throws<ArgumentException>(() => LifetimeFitRows.Create([Spell.LeftCensored(120)], [], entered: [10]));
        Assert.Throws<ArgumentException>(() => LifetimeFitRows.Create([Spell.Exact(120), Spell.Exact(90)], [], entered: [10]));
    }

    [Fact]
    public void A_repaired_unit_is_predicted_by_the_curve_that_holds_from_now_on()
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
        var population = new PopulationParameters(LifeDistribution.Weibull, 0, [0.2], 0, 0, 0, 0);
        var repaired = new LifePrediction(population, ClientEffectNodes.For(population), window.Place, covariates: 0.2);
        double Wear(double days) => Math.Exp((Math.Log(days) - window.Centre - 0.2) / window.Sigma);

        Assert.Equal(Math.Exp(Wear(150) - Wear(150 + 60)), repaired.SurvivalGiven(150, 60), 1e-12);
    }
}
