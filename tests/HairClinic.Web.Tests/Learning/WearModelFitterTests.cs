using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Learning;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

/// <summary>What a fit of lives believes of a workshop it never saw.</summary>
public sealed class WearModelFitterTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly Dictionary<KnownCovariate, double> NoFactors = [];

    [Fact]
    public void A_workshop_never_seen_differs_as_those_that_were()
    {
        var fit = WearModelFitter.FitLives(Lives(), NoFactors, new(2027, 2, 3), default);
        var model = new WearModel(fit, NoFactors);

        // Four workshops alike: little of 0.35 is left.
        Assert.InRange(fit.EffectSpread, 0.05, 0.13);
        Assert.Equal(Math.Pow(fit.EffectSpread, 2), Doubt(CovariateValue.Workshop(Guid.NewGuid())), 1e-12);
        Assert.Equal(Math.Pow(fit.EffectSpread, 2), Doubt(CovariateValue.ForBaseMaterial(Guid.NewGuid())), 1e-12);
        Assert.Equal(0.35 * 0.35, Doubt(CovariateValue.For(KnownCovariate.DailyHeat)), 1e-12);

        double Doubt(CovariateValue unseen) =>
            (model.PopulationFor(Window, [unseen]).PracticeVariance - model.PopulationFor(Window, []).PracticeVariance)
            * Window.Width
            * Window.Width;
    }

    // Of four workshops, the units of each spread alike from 180 to 275 days.
    private static List<LifeSpell> Lives() =>
        [
            .. Enumerable
                .Range(0, 80)
                .Select(unit =>
                {
                    var (lasts, workshop) = (180 + 5 * (unit / 4), new Guid(unit % 4, 3, 0, new byte[8]));
                    return new LifeSpell(
                        new Guid(unit, 1, 0, new byte[8]),
                        workshop,
                        workshop,
                        workshop,
                        lasts,
                        WornOut: true,
                        new Guid(unit, 2, 0, new byte[8]),
                        Spell.FromBounds(lasts - 14, lasts),
                        Window,
                        [CovariateValue.Workshop(workshop)]
                    )
                    {
                        FirstWornOn = new LocalDate(2026, 1, 1),
                    };
                }),
        ];
}
