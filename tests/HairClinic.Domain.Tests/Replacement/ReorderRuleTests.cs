using HairClinic.Domain.Replacement;
using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Tests.Wear;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class ReorderRuleTests
{
    private static readonly LocalDate Today = new(2027, 3, 1);
    private static readonly WorkshopWorkingDays AlwaysOpen = new(Today, [], 1024);
    private static readonly LeadTimeTable Lead = LeadTimeTable.FromLeadTime(LeadTime.Learn(new LeadTimePrior(56, 77), [], []), 0, 0, 730);

    // Rows of gap.csv with the practice's 56/77-day row as the lead time: the daily grid against quadrature.
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void One_unit_agrees_with_quadrature(int index)
    {
        var gap = Table.Read("gap.csv");
        var row = gap.Rows[index];
        var (shape, scale, age) = (gap.Number(row, "life_shape"), gap.Number(row, "life_scale_days"), (int)gap.Number(row, "age_days"));
        var question = Question(Math.Log(scale), 1 / shape, age);

        var answer = new ReorderRule().Answer(question);

        Assert.Equal(gap.Number(row, "gap_if_ordered_today"), answer.GapIfOrderedToday, 2e-5);
        Assert.Equal(gap.Number(row, "expected_days_without_hair"), answer.ExpectedDaysWithoutHair, 2e-3);
        int? expected = gap.Text(row, "reorder_in_days") is { Length: > 0 } days ? (int)Table.Number(days) : null;
        Assert.Equal(expected, answer.ReorderInDays);
    }

    [Fact]
    public void The_last_day_is_the_last_at_which_the_chance_is_accepted()
    {
        var question = Question(Math.Log(260), 1 / 7.6, 60);
        var rule = new ReorderRule();
        var curve = new double[120];
        rule.GapByOrderDay(question, curve);
        var days = rule.Answer(question).ReorderInDays!.Value;

        Assert.True(curve[days] <= question.Alpha);
        Assert.True(curve[days + 1] > question.Alpha);
        Assert.All(Enumerable.Range(1, 119), d => Assert.True(curve[d] >= curve[d - 1] - 1e-12));
    }

    [Theory]
    [InlineData(60, 0)]
    [InlineData(200, 0)]
    [InlineData(60, 90)]
    [InlineData(200, 90)]
    public void The_worst_gap_is_the_greater_of_the_two_that_the_whole_answer_has(int age, int waited)
    {
        var question = Question(Math.Log(260), 1 / 7.6, age);
        var each = question.InHand[0] with { WornDays = 0 };
        if (waited > 0)
        {
            var left = LeadTimeTable.BuildRemaining(LeadTime.Learn(new LeadTimePrior(56, 77), [], [waited]), waited, 0, 0, 730);
            question = question with { InFlight = [new UnitOnOrder(each, left, AlwaysOpen)] };
        }
        var rule = new ReorderRule();
        var whole = ReorderPlanner.Plan(
            rule,
            question,
            Today,
            Guid.Empty,
            each,
            new OpeningDays(WeekdaySet.Of(IsoDayOfWeek.Monday), [], DateTimeZone.Utc)
        );

        Assert.Equal(Math.Max(whole.GapIfOrderedToday, whole.GapBeforeArrival), ReorderPlanner.LargerGapChance(rule, question));
    }

    [Fact]
    public void Without_a_bondable_unit_and_none_in_flight_there_is_a_gap_already()
    {
        var answer = new ReorderRule().Answer(Question(5, 0.1, 0) with { InHand = [] });

        Assert.Equal(1, answer.GapIfOrderedToday, 1e-9);
        Assert.Null(answer.ReorderInDays);
        Assert.InRange(answer.ExpectedDaysWithoutHair, 60, 100);
    }

    [Fact]
    public void Thin_bases_that_wear_out_within_the_lead_time_need_more_than_one()
    {
        var thin = new RemainingLife(Math.Log(40), 1, 0.2, 0);
        var quantity = new ReorderRule().Quantity(Question(0, 0.2, 0) with { InHand = [thin] }, thin);

        Assert.InRange(quantity!.Value, 2, 5);
        Assert.Null(new ReorderRule().Quantity(Question(0, 0.2, 0) with { InHand = [thin] }, thin, most: 1));
    }

    [Fact]
    public void A_workshop_that_closes_for_weeks_asks_for_the_order_weeks_earlier()
    {
        var open = Question(Math.Log(260), 1 / 7.6, 60);
        var closed = open with
        {
            Workshop = new WorkshopWorkingDays(Today, [new DateInterval(Today.PlusDays(40), Today.PlusDays(67))], 1024),
        };
        var rule = new ReorderRule();

        Assert.Equal(rule.Answer(open).ReorderInDays!.Value - 28, rule.Answer(closed).ReorderInDays!.Value);
    }

    [Fact]
    public void Hair_that_lasts_beyond_sight_is_not_called_urgent()
    {
        var answer = new ReorderRule().Answer(Question(Math.Log(5000), 0.1, 0));

        Assert.True(answer.IsPastSight);
        Assert.Equal(512, answer.ReorderInDays);
    }

    [Fact]
    public void The_last_day_to_order_is_moved_to_a_working_day_before_it()
    {
        var weekdays = new OpeningDays(WeekdaySet.Of(IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday), [], DateTimeZone.Utc);

        Assert.Equal(new LocalDate(2027, 3, 9), ReorderRule.LastOrderDay(Today, new ReorderAnswer(0.01, 11, 0, false), weekdays));
        Assert.Equal(Today, ReorderRule.LastOrderDay(Today, new ReorderAnswer(0.04, 0, 0, false), weekdays));
        Assert.Null(ReorderRule.LastOrderDay(Today, new ReorderAnswer(0.2, null, 0, false), weekdays));
    }

    [Fact]
    public void A_belief_on_five_places_answers_as_on_all_of_them()
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
        var all = ClientEffectNodes.For(PopulationParameters.FromPriors(window));
        RemainingLife[] units = [new(window.Centre, window.Width, window.Sigma, 40), new(window.Centre, window.Width, window.Sigma, 100)];
        var question = Question(0, 0.1, 0) with { InHand = units, Client = all };
        var rule = new ReorderRule();
        var (full, few) = (rule.Answer(question), rule.Answer(question with { Client = all.Reduced() }));

        Assert.Equal(full.GapIfOrderedToday, few.GapIfOrderedToday, 1e-5);
        Assert.Equal(full.ReorderInDays, few.ReorderInDays);
        Assert.Equal(full.ExpectedDaysWithoutHair, few.ExpectedDaysWithoutHair, 1e-3);
    }

    [Fact]
    public void A_log_normal_life_agrees_with_a_sum_over_the_lead_time()
    {
        var population = new PopulationParameters(LifeDistribution.LogNormal, Math.Log(0.3), [], 5, 0, 0, 0);
        var life = new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain);
        var question = Question(5, 0.3, 50) with { Distribution = LifeDistribution.LogNormal };
        var expected =
            Lead.Never
            + Enumerable.Range(0, 730).Sum(d => (Lead.Survival(d - 1) - Lead.Survival(d)) * (1 - life.SurvivalGiven(50, d + 14)));

        Assert.Equal(expected, new ReorderRule().Answer(question).GapIfOrderedToday, 1e-8);
    }

    // Two ways to the same chance: the age among the rows and lives conditional within each place, or a ratio of curves without it.
    [Fact]
    public void The_ages_of_units_in_hand_belong_to_what_is_believed_of_the_client()
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
        var population = PopulationParameters.FromPriors(window) with { PracticeVariance = 0 };
        ClientEffectNodes Believe(params Spell[] own) =>
            ClientEffectNodes.For(population, LifetimeFitRows.Create(own, [], [.. own.Select(_ => window.Place)], new int[own.Length]));
        var life = new LifePrediction(population, Believe(Spell.Exact(190)), window.Place);
        var certain = LeadTimeTable.FromLeadTime(LeadTime.Learn(new LeadTimePrior(56, 56.00001), [], []), 0, 0, 730);
        var question = Question(window.Centre, window.Sigma, 160) with
        {
            Client = Believe(Spell.Exact(190), Spell.RightCensored(160)),
            InHand = [new RemainingLife(window.Centre, window.Width, window.Sigma, 160)],
            Lead = certain,
        };

        Assert.Equal(1 - life.SurvivalGiven(160, 70), new ReorderRule().Answer(question).GapIfOrderedToday, 1e-6);
    }

    /// <summary>A chance is accepted up to and with the number the practice set.</summary>
    [Fact]
    public void A_chance_that_is_just_what_is_accepted_is_accepted()
    {
        var (question, rule) = (Question(Math.Log(260), 1 / 7.6, 60), new ReorderRule());
        var curve = new double[513];
        rule.GapByOrderDay(question, curve);

        foreach (var day in new[] { 0, 60, 90 })
        {
            var answer = rule.Answer(question with { Alpha = curve[day] });
            Assert.Equal((day, false), (answer.ReorderInDays, answer.IsPastSight));
        }
        var far = rule.Answer(question with { Alpha = curve[512] });
        Assert.Equal((512, true), (far.ReorderInDays, far.IsPastSight));
        var late = rule.Answer(question with { Alpha = curve[0] / 2 });
        Assert.Equal((null, false), (late.ReorderInDays, late.IsPastSight));
    }

    [Fact]
    public void As_many_as_may_be_asked_for_are_asked_for_where_it_takes_as_many()
    {
        var thin = new RemainingLife(Math.Log(40), 1, 0.2, 0);
        var question = Question(0, 0.2, 0) with { InHand = [thin] };
        var rule = new ReorderRule();
        var most = rule.Quantity(question, thin)!.Value;
        var chance = rule.Answer(question with { InHand = [.. Enumerable.Repeat(thin, most + 1)] }).GapIfOrderedToday;

        Assert.Equal(most, rule.Quantity(question, thin, most));
        Assert.Equal(most, rule.Quantity(question with { Alpha = chance }, thin));
    }

    /// <summary>Whatever comes later than can be seen leaves a gap as surely as the hair is gone by then.</summary>
    [Fact]
    public void An_order_that_may_come_later_than_can_be_seen_is_a_gap_where_the_hair_is_gone_by_then()
    {
        var gone = new ReorderRule(64).Answer(Question(Math.Log(33), 0.001, 0)).GapIfOrderedToday;
        Assert.InRange(gone, Lead.Survival(19), Lead.Survival(18));
        Assert.Equal(0, new ReorderRule(64).Answer(Question(Math.Log(1e6), 0.1, 0)).GapIfOrderedToday, 1e-9);
    }

    // One order in twenty and more would take longer than can be seen: with six units in the drawer no other is asked for.
    [Fact]
    public void A_workshop_that_may_take_for_ever_does_not_have_more_and_more_ordered()
    {
        var wide = LeadTimeTable.FromLeadTime(LeadTime.Learn(new LeadTimePrior(56, 400), [], []), 0, 0, 730);
        var unit = new RemainingLife(Math.Log(260), 1, 1 / 7.6, 0);
        var question = Question(0, 0.1, 0) with { Lead = wide, InHand = [.. Enumerable.Repeat(unit, 6)] };
        var rule = new ReorderRule();

        Assert.True(wide.Survival(700) > question.Alpha);
        Assert.True(rule.Answer(question).IsPastSight);
        Assert.Equal(0, rule.Quantity(question, unit));
        Assert.InRange(rule.Quantity(question with { InHand = [unit] }, unit)!.Value, 1, 4);
    }

    [Fact]
    public void Where_no_working_day_lies_between_it_is_today() =>
        Assert.Equal(
            Today,
            ReorderRule.LastOrderDay(
                Today,
                new ReorderAnswer(0.01, 1, 0, false),
                new OpeningDays(WeekdaySet.Of(IsoDayOfWeek.Wednesday), [], DateTimeZone.Utc)
            )
        );

    // Weibull's distribution by its formula: the first whole day by which a unit of that age is gone with at least the chance.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public void Hair_lasts_to_the_day_its_life_runs_out_with_that_chance(double chance)
    {
        var (scale, shape, age) = (260.0, 7.6, 60);
        double Gone(int day) => 1 - Math.Exp(Math.Pow(age / scale, shape) - Math.Pow((age + day) / scale, shape));
        var expected = Enumerable.Range(0, 1024).First(day => Gone(day) >= chance);
        var days = new int?[] { -1, -1 };

        new ReorderRule().HairEndQuantiles(Question(Math.Log(scale), 1 / shape, age), [chance, 1.1], days);

        Assert.Equal([expected, null], days);
    }

    [Fact]
    public void Where_there_is_no_hair_it_is_gone_before_tomorrow_for_certain()
    {
        var days = new int?[] { null };

        new ReorderRule().HairEndQuantiles(Question(5, 0.1, 0) with { InHand = [] }, [1], days);

        Assert.Equal(1, days[0]);
    }

    private static ReorderInput Question(double centre, double tau, int age)
    {
        var sure = new PopulationParameters(LifeDistribution.Weibull, 0, [], 0, 0, 0, 0);
        return new ReorderInput(
            LifeDistribution.Weibull,
            ClientEffectNodes.For(sure).Reduced(),
            [new(centre, 1, tau, age)],
            [],
            Lead,
            AlwaysOpen,
            14
        );
    }
}
