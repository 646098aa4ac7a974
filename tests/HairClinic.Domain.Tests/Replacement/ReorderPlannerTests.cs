using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class ReorderPlannerTests
{
    private static readonly LocalDate Today = new(2027, 3, 1);
    private static readonly OpeningDays EveryDay = new(WeekdaySet.Every, [], DateTimeZone.Utc);

    // What there is lasts as long as the next order takes, on this one day: whoever orders on it orders one all the same.
    [Fact]
    public void On_the_last_day_to_order_one_is_to_be_ordered()
    {
        var rule = new ReorderRule();
        var age = Enumerable.Range(60, 200).First(a => rule.Answer(Question(a)).ReorderInDays == 0);

        Assert.Equal(0, rule.Quantity(Question(age), New));
        var plan = Plan(Question(age));
        Assert.Equal((Today, 1), (plan.OrderBy, plan.Quantity));
        Assert.Equal(0, Plan(Question(age - 20)).Quantity);
        Assert.True(Plan(Question(age + 20)).Quantity >= 1);
    }

    [Fact]
    public void A_weekend_between_today_and_the_last_day_makes_today_the_day_and_one_the_number()
    {
        var rule = new ReorderRule();
        var age = Enumerable.Range(60, 200).First(a => rule.Answer(Question(a)).ReorderInDays == 1);
        var mondays = new OpeningDays(WeekdaySet.Of(IsoDayOfWeek.Monday), [], DateTimeZone.Utc);

        var plan = ReorderPlanner.Plan(rule, Question(age), Today, Guid.Empty, New, mondays);

        Assert.Equal((Today, 1), (plan.OrderBy, plan.Quantity));
    }

    [Fact]
    public void A_spare_always_to_be_ready_is_ordered_though_there_is_time()
    {
        var one = Question(0) with { Spares = 1 };

        Assert.Equal((1, 1), (Plan(one).SparesMissing, Plan(one).Quantity));
        Assert.Equal(ReorderVerdict.SpareMissing, (Plan(one) with { OnHead = true }).Standing.Verdict);
        Assert.Equal(0, Plan(one with { InHand = [New, New] }).SparesMissing);
        Assert.Equal((2, 2), (Plan(one with { Spares = 2 }).SparesMissing, Plan(one with { Spares = 2 }).Quantity));
    }

    [Fact]
    public void What_is_lent_to_a_client_is_no_spare_of_theirs()
    {
        var lent = Question(0) with { InHand = [New, RemainingLife.OfDays(60)], Lent = 1, Spares = 1 };

        Assert.Equal(1, Plan(lent).SparesMissing);
    }

    private static RemainingLife New => new(Math.Log(260), 1, 0.13, 0);

    private static ReorderOutlook Plan(ReorderInput question) =>
        ReorderPlanner.Plan(new ReorderRule(), question, Today, Guid.Empty, New, EveryDay);

    private static ReorderInput Question(int age) =>
        new(
            LifeDistribution.Weibull,
            ClientEffectNodes.For(new PopulationParameters(LifeDistribution.Weibull, 0, [], 0, 0, 0, 0)),
            [New with { WornDays = age }],
            [],
            LeadTimeTable.FromLeadTime(LeadTime.Learn(new LeadTimePrior(56, 77), [], []), 0, 0, 700),
            new WorkshopWorkingDays(Today, [], 1024),
            14
        );
}
