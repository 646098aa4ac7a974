using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Learning;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

/// <summary>Which fit the night's watch goes by.</summary>
public sealed class WatchNightTests
{
    private const int Units = 60;
    private static readonly LocalDate Tonight = new(2027, 2, 3);
    private static readonly Guid Workshop = new(1, 0, 0, new byte[8]);
    private static readonly Dictionary<KnownCovariate, double> NoFactors = [];

    [Fact]
    public void A_decline_is_named_by_the_nights_own_fit()
    {
        var night = Watch(Lives(), Tonight, []);

        var alarm = Assert.Single(night.Raised);
        Assert.InRange(alarm.CohortFrom, Delivered(25), Delivered(35));
        Assert.Equal(Workshop, Assert.Single(night.Begun).StreamId);
        Assert.Empty(night.Over);
    }

    // What came since a fit was made has pulled nothing of it aside yet: it would look as if the workshop had got worse.
    [Fact]
    public void By_an_older_fit_nothing_is_named_and_the_charts_stay()
    {
        var chart = new StoredWatch(Guid.NewGuid(), new WatchedStream(WatchedStreamKind.Workshop, Workshop));

        var night = Watch(Lives(), Tonight.PlusDays(-1), [chart]);

        Assert.Empty(night.Raised);
        Assert.Empty(night.Over);
    }

    [Fact]
    public void Without_a_fit_nothing_is_named()
    {
        var night = new WatchNight(Tonight, [], []);

        night.WatchUnits(null, Lives(), NoFactors, l => l.FirstWornOn);

        Assert.Empty(night.Raised);
        Assert.Empty(night.Begun);
    }

    private static WatchNight Watch(List<LifeSpell> lives, LocalDate fittedFor, StoredWatch[] charts)
    {
        var fit = WearModelFitter.FitLives(lives, NoFactors, fittedFor, default);
        var night = new WatchNight(Tonight, [], charts);
        night.WatchUnits(fit, lives, NoFactors, l => l.FirstWornOn);
        return night;
    }

    private static LocalDate Delivered(int unit) => Tonight.PlusDays(-360 + 4 * unit);

    // One a client; a unit lasts 204 to 252 days, or from the thirtieth on half as long.
    private static List<LifeSpell> Lives()
    {
        var lives = new List<LifeSpell>();
        for (var unit = 0; unit < Units; unit++)
        {
            var lasts = 204 + 6 * (unit * 5 % 9);
            if (unit >= 30)
                lasts /= 2;
            var worn = Period.DaysBetween(Delivered(unit), Tonight);
            lives.Add(
                new LifeSpell(
                    new Guid(unit, 1, 0, new byte[8]),
                    Workshop,
                    Workshop,
                    Workshop,
                    Math.Min(worn, lasts),
                    worn >= lasts,
                    new Guid(unit, 2, 0, new byte[8]),
                    worn >= lasts ? Spell.FromBounds(lasts - 14, lasts) : Spell.RightCensored(worn),
                    WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273),
                    [CovariateValue.Workshop(Workshop)]
                )
                {
                    FirstWornOn = Delivered(unit),
                }
            );
        }
        return lives;
    }
}
