using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Which days an answer to “since when?” means: common practice, no source.</summary>
public sealed class SinceWhenTests
{
    private static readonly LocalDate Asked = new(2027, 2, 20);

    [Theory]
    [InlineData(SinceWhen.TwoOrThreeDays, 3, 2)]
    [InlineData(SinceWhen.AboutAWeek, 9, 5)]
    public void An_answer_means_the_days_about_what_was_said(SinceWhen answer, int earliest, int latest) =>
        Assert.Equal(new DaysMeant(Asked.PlusDays(-earliest), Asked.PlusDays(-latest)), answer.DaysMeant(Asked));

    [Fact]
    public void Whoever_does_not_know_says_nothing() => Assert.Null(SinceWhen.NotKnown.DaysMeant(Asked));

    [Theory]
    [InlineData(SinceWhen.AboutAWeek, 4, false)]
    [InlineData(SinceWhen.AboutAWeek, 5, true)]
    [InlineData(SinceWhen.TwoOrThreeDays, 1, false)]
    [InlineData(SinceWhen.TwoOrThreeDays, 2, true)]
    [InlineData(SinceWhen.NotKnown, 0, true)]
    public void What_was_made_later_cannot_have_come_up_before(SinceWhen answer, int madeDaysAgo, bool possible) =>
        Assert.Equal(possible, answer.IsPossible(Asked, Asked.PlusDays(-madeDaysAgo)));
}
