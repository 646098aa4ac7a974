using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.LoadAhead;

public sealed class LoadAheadTests
{
    private const int Weeks = 52;
    private static readonly VisitTypeMinutes Minutes = new(new(120, 75), new(60, 45), new(180, 150));
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    // A renewal every 10 days for certain: by hand.
    [Fact]
    public void What_ends_on_a_fixed_day_is_counted_on_it()
    {
        var (first, again, perDay) = (new double[60], new double[60], new double[60]);
        (first[3], again[10]) = (1, 1);
        RenewalCalculator.Expect(first, again, perDay);

        Assert.Equal([3, 13, 23, 33, 43, 53], Enumerable.Range(0, 60).Where(day => perDay[day] > 0.5));
        Assert.Equal((1, 0), RenewalCalculator.MomentsWithin(perDay, again, 0, 6));
        Assert.Equal((0, 0), RenewalCalculator.MomentsWithin(perDay, again, 4, 10));
    }

    // A coin a day with chance p is a renewal process whose counts are binomial.
    [Fact]
    public void Counts_of_coins_have_the_binomial_mean_and_variance()
    {
        const double P = 0.3;
        var (coin, perDay) = (new double[40], new double[40]);
        for (var day = 1; day < 40; day++)
            coin[day] = P * Math.Pow(1 - P, day - 1);
        RenewalCalculator.Expect(coin, coin, perDay);
        var (mean, variance) = RenewalCalculator.MomentsWithin(perDay, perDay, 10, 16);

        Assert.Equal(7 * P, mean, 1e-9);
        Assert.Equal(7 * P * (1 - P), variance, 1e-9);
    }

    [Fact]
    public void A_rebond_comes_at_the_lift_or_at_the_target_whichever_is_first()
    {
        var hold = Hold(new PracticeEffectNode(0, 1));
        var (chances, survival) = (new double[40], new double[40]);
        hold.SurvivalByDay(survival);
        RebondIntervalCalculator.FillChances(survival, 32, 10, chances);

        Assert.Equal(1, chances.Sum(), 1e-12);
        Assert.Equal(hold.SurvivalGiven(10, 21), chances[22], 1e-12);
        Assert.Equal(0, chances[0]);
        RebondIntervalCalculator.FillChances(survival, 32, 40, chances);
        Assert.Equal(1, chances[0]);
    }

    [Fact]
    public void A_wash_near_a_rebond_is_one_trip_with_it()
    {
        var (rebonds, washes) = (new double[30], new double[30]);
        rebonds[9] = 0.8;
        ExpectedWashes.Expect(7, 7, rebonds, washes);

        Assert.Equal(0.2, washes[7], 1e-12);
        Assert.Equal(1, washes[14]);
        Assert.Equal(3.2, washes.Sum(), 1e-12);
    }

    [Fact]
    public void Means_add_up_exactly_over_clients_and_salons_and_bands_do_not()
    {
        var (one, other, both) = (new SalonLoad(Weeks), new SalonLoad(Weeks), new SalonLoad(Weeks));
        var load = new ClientLoadCalculator(Weeks);
        for (var client = 0; client < 20; client++)
        {
            load.AddTo(client % 2 == 0 ? one : other, Question(client), Minutes);
            load.AddTo(both, Question(client), Minutes);
        }
        var sum = new SalonLoad(Weeks);
        sum.Add(one);
        sum.Add(other);

        for (var week = 0; week < Weeks; week++)
        {
            Assert.Equal(both.Week(week).ChairMinutes, sum.Week(week).ChairMinutes, 1e-9);
            Assert.Equal(both.Week(week).ChairVariance, sum.Week(week).ChairVariance, 1e-6);
            Assert.Equal(one.Week(week).Rebonds + other.Week(week).Rebonds, both.Week(week).Rebonds, 1e-9);
        }
        var wide = Width(one.ChairBand(10)) + Width(other.ChairBand(10));
        Assert.True(Width(both.ChairBand(10)) < wide);
    }

    [Fact]
    public void What_all_clients_share_does_not_average_out()
    {
        var (few, many) = (new SalonLoad(Weeks), new SalonLoad(Weeks));
        var load = new ClientLoadCalculator(Weeks);
        for (var client = 0; client < 600; client++)
        {
            load.AddTo(many, Question(client % 30), Minutes);
            if (client < 30)
                load.AddTo(few, Question(client), Minutes);
        }
        // Weeks far ahead: by chance alone twenty times the clients would have a band √20 times as wide; it is wider.
        var ratio =
            Enumerable.Range(20, 20).Sum(w => Width(many.ChairBand(w))) / Enumerable.Range(20, 20).Sum(w => Width(few.ChairBand(w)));

        Assert.InRange(ratio, 1.02 * Math.Sqrt(20), 20);
    }

    // A hundred thousand seeded stories of one client, each with a practice's effect of its own.
    [Fact]
    public void One_clients_weeks_agree_with_stories_played_out()
    {
        var salon = new SalonLoad(Weeks);
        new ClientLoadCalculator(Weeks).AddTo(salon, Question(10) with { WashEveryDays = null }, Minutes);
        var dice = new Random(52);
        var counts = new double[Weeks];
        const int Stories = 100_000;
        for (var story = 0; story < Stories; story++)
        {
            var shared = Window.PracticeFactor * Normal(dice);
            for (var (day, age) = (0, 10); day < 7 * Weeks; age = 0)
            {
                // Each bond's place among clients is drawn anew, as the prediction of a single hold sees it.
                day += Next(dice, shared + Window.ClientFactor * Normal(dice), age);
                if (day < 7 * Weeks)
                    counts[day / 7]++;
            }
        }
        for (var week = 0; week < Weeks; week++)
            Assert.Equal(counts[week] / Stories, salon.Week(week).Rebonds, 0.012);
    }

    [Fact]
    public void The_first_week_that_does_not_fit_is_named()
    {
        var salon = new SalonLoad(4);
        salon.Add(1, 2, new WeekLoad(1, 0, 0, 900, 500, 0, 0));
        double[] hours = [480, 480, 480, 480];

        Assert.Equal(2, salon.FirstThatDoesNotFit(hours, hours));
        Assert.Null(salon.FirstThatDoesNotFit([480, 480, 900, 480], hours));
    }

    [Fact]
    public void Orders_fall_on_the_reorder_day_and_a_life_later()
    {
        var (load, life) = (new OrderLoad(12), new double[201]);
        life[200] = 1;
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
            OrderLoadCalculator.AddTo(load, scenario, new LocalDate(2027, 1, 15), 20, life, 364);

        Assert.Equal([1, 7], Enumerable.Range(0, 12).Where(m => load.Month(m).Mean > 0.5));
        Assert.Equal(2, Enumerable.Range(0, 12).Sum(m => load.Month(m).Mean), 12);
        Assert.Equal(0, load.Month(1).Variance, 12);
    }

    private static ClientLoadInput Question(int client) =>
        new(Hold, 32)
        {
            BondAgeDays = client,
            CurrentTargetDays = 32,
            WashEveryDays = 14,
            NextWashInDays = client % 14,
        };

    private static LifePrediction Hold(PracticeEffectNode scenario)
    {
        var unseen = PopulationParameters.FromPriors(Window);
        // What all share is held at the scenario's value, so it spreads no more.
        var given = unseen with
        {
            PracticeMean = scenario.Shift * Math.Sqrt(unseen.PracticeVariance),
            PracticeVariance = 0,
        };
        return new LifePrediction(given, ClientEffectNodes.For(given), Window.Place);
    }

    private static int Next(Random dice, double place, int age)
    {
        var centre = Window.Centre + Window.Width * place;
        var worn = age == 0 ? 0 : Math.Exp((Math.Log(age) - centre) / Window.Sigma);
        var hold = Math.Exp(centre + Window.Sigma * Math.Log(worn - Math.Log(1 - dice.NextDouble()))) - age;
        return (int)Math.Ceiling(Math.Min(hold, 32 - age));
    }

    private static double Width((double From, double To) band) => band.To - band.From;

    private static double Normal(Random dice) =>
        Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
