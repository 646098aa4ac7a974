using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class PreparationTimeTests
{
    private static readonly LocalDate Today = new(2027, 3, 1);

    [Fact]
    public void Until_five_units_were_seen_the_setting_stands_as_it_is()
    {
        var few = PreparationTime.Learn(14, [20, 21, 19, 25], [40]);

        Assert.False(few.IsLearnt);
        Assert.Equal((14, 14, 14, 0), (few.SettingDays, few.HalfDays, few.NineInTenDays, few.Units));
        Assert.True(PreparationTime.Learn(14, [20, 21, 19, 25, 22], []).IsLearnt);
        Assert.Equal(0, PreparationTime.Fixed(0).HalfDays);
    }

    // The truth of a simulated practice: any day from 7 to 35 alike.
    [Fact]
    public void What_units_took_is_learnt_whatever_the_setting_says()
    {
        double[] taken = [.. Enumerable.Range(0, 58).Select(i => 7.0 + i / 2)];

        var learnt = PreparationTime.Learn(14, taken, []);

        Assert.Equal(58, learnt.Units);
        Assert.InRange(learnt.HalfDays, 17, 21);
        Assert.InRange(learnt.NineInTenDays, 31, 38);
        Assert.InRange(PreparationTime.Learn(14, [21, 21, 21, 21, 21], []).HalfDays, 16, 19);
    }

    [Fact]
    public void A_unit_that_still_waits_says_that_it_takes_longer()
    {
        double[] taken = [12, 14, 15, 13, 16, 14];

        Assert.True(PreparationTime.Learn(14, taken, [19, 20, 21]).HalfDays > PreparationTime.Learn(14, taken, []).HalfDays);
    }

    [Fact]
    public void Days_that_are_no_preparation_move_nothing()
    {
        double[] taken = [12, 14, 15, 13, 16, 14, 17, 11];
        var (honest, wrong) = (PreparationTime.Learn(14, taken, [5]), PreparationTime.Learn(14, [.. taken, 340], [5, 400]));

        Assert.Equal((honest.HalfDays, honest.NineInTenDays, 8), (wrong.HalfDays, wrong.NineInTenDays, wrong.Units));
    }

    [Fact]
    public void Read_from_its_row_it_is_the_same_until_the_setting_changes()
    {
        var stored = new StoredPreparation(Guid.CreateVersion7());
        stored.LearnFrom(Today, 14, [20, 21, 19, 25, 22, 30], [12]);

        var read = stored.UnderSetting(14);

        Assert.Equal(PreparationTime.Learn(14, [20, 21, 19, 25, 22, 30], [12]).MassByDay.ToArray(), read.MassByDay.ToArray());
        Assert.Equal((6, 14), (read.Units, read.SettingDays));
        Assert.Equal(PreparationTime.Learn(28, [20, 21, 19, 25, 22, 30], [12]).HalfDays, stored.UnderSetting(28).HalfDays);
        Assert.Equal(14, new StoredPreparation(Guid.CreateVersion7()).UnderSetting(14).HalfDays);
    }

    // By the definition: the chance with days that vary is the mean of the chances with each number of days.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_plan_with_days_that_vary_is_the_mean_of_the_plans_with_each_of_them(bool inFlight)
    {
        var closures = new DateInterval(Today.PlusDays(50), Today.PlusDays(70));
        var workshop = new WorkshopWorkingDays(Today, [closures], 1024);
        var prior = new LeadTimePrior(56, 77);
        var unit = new RemainingLife(Math.Log(260), 1, 0.2, 150);
        var question = new ReorderInput(
            LifeDistribution.Weibull,
            ClientEffectNodes.For(new PopulationParameters(LifeDistribution.Weibull, 0, [], 0, 0.01, 0, 0)).Reduced(3),
            [unit],
            inFlight
                ? [new(unit with { WornDays = 0 }, LeadTimeTable.BuildRemaining(LeadTime.Learn(prior, [], [40]), 40, 0, 0, 730), workshop)]
                : [],
            LeadTimeTable.FromLeadTime(LeadTime.Learn(prior, [], []), 0.05, 7, 730),
            workshop,
            14
        );
        var learnt = PreparationTime.Learn(14, [10, 12, 17, 25, 30, 14, 21], []);
        var rule = new ReorderRule();
        var (gap, expected, before) = (0.0, 0.0, 0.0);
        // What lies past the last day is never ready.
        double[] shares = [.. learnt.MassByDay, 1 - learnt.MassByDay.ToArray().Sum()];
        for (var i = 0; i < shares.Length; i++)
        {
            var (mass, days) = (shares[i], i == shares.Length - 1 ? 5_000 : i);
            var answer = rule.Answer(question with { PreparationDays = days });
            gap += mass * answer.GapIfOrderedToday;
            expected += mass * answer.ExpectedDaysWithoutHair;
            if (inFlight)
                before += mass * rule.GapChanceBeforeOrderInFlight(question with { PreparationDays = days }, 1);
        }

        var varying = rule.Answer(question with { Preparation = learnt });

        Assert.Equal(gap, varying.GapIfOrderedToday, 1e-10);
        Assert.Equal(expected, varying.ExpectedDaysWithoutHair, 1e-6);
        if (inFlight)
            Assert.Equal(before, rule.GapChanceBeforeOrderInFlight(question with { Preparation = learnt }, 1), 1e-10);
        Assert.True(varying.GapIfOrderedToday > rule.Answer(question with { PreparationDays = learnt.HalfDays }).GapIfOrderedToday);
        var (fixedDays, given) = (rule.Answer(question), rule.Answer(question with { Preparation = PreparationTime.Fixed(14) }));
        Assert.Equal(fixedDays.GapIfOrderedToday, given.GapIfOrderedToday, 1e-12);
    }
}
