using HairClinic.Domain.Checks;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Checks;

public sealed class DateCheckTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 0);

    [Fact]
    public void A_question_is_answered_once()
    {
        var who = Guid.CreateVersion7();
        var check = DateCheck.OfBond(Guid.CreateVersion7(), Guid.CreateVersion7(), new(Today.PlusDays(-400), Today, 400, 28, 56), Today);
        Assert.True(check.IsOpen);

        check.SetAnswer(DateCheckAnswer.Right, who, Now, Today);

        Assert.Equal((DateCheckAnswer.Right, who, Now, Today), (check.Answer, check.AnsweredBy, check.AnsweredAt, check.AnsweredOn));
        Refused.Saying(
            "Somebody answered this a moment ago. Open the list again.",
            () => check.SetAnswer(DateCheckAnswer.Wrong, who, Now, Today)
        );
    }

    [Fact]
    public void An_answer_is_about_the_days_that_were_asked_about_alone()
    {
        var check = DateCheck.OfUnit(
            Guid.CreateVersion7(),
            DateCheckKind.OrderTook,
            Guid.CreateVersion7(),
            new(Today.PlusDays(-560), Today, 560, 41, 77),
            Today
        );

        Assert.True(check.IsAbout(Today.PlusDays(-560), Today));
        Assert.False(check.IsAbout(Today.PlusDays(-56), Today));
        Assert.False(check.IsAbout(Today.PlusDays(-560), null));
    }

    [Fact]
    public void That_an_order_is_still_on_its_way_holds_for_four_weeks()
    {
        Assert.True(OrderWaitingCheck.StillHolds(Today, Today));
        Assert.True(OrderWaitingCheck.StillHolds(Today.PlusDays(-27), Today));
        Assert.False(OrderWaitingCheck.StillHolds(Today.PlusDays(-28), Today));
        Assert.False(OrderWaitingCheck.StillHolds(null, Today));
    }

    // A new year's closure, seen in three years: for those it explains what orders took, for the next two what they will.
    [Fact]
    public void Closures_are_those_of_the_years_seen_and_the_next_two()
    {
        var check = OfNewYear(new(2026, 12, 20), new(2027, 1, 6));

        Assert.Equal([2024, 2025, 2026, 2027, 2028], check.ClosuresThrough(Today).Select(c => c.Start.Year));
        Assert.All(check.ClosuresThrough(Today), c => Assert.Equal((12, 20, 1, 6), (c.Start.Month, c.Start.Day, c.End.Month, c.End.Day)));
        // Asked about in summer, and within one.
        Assert.Equal([2024, 2025, 2026, 2027], check.ClosuresThrough(new LocalDate(2027, 1, 5)).Select(c => c.Start.Year));
    }

    [Theory]
    [InlineData("2024-12-24", "2025-01-02", true)]
    [InlineData("2030-01-05", "2030-01-12", true)]
    [InlineData("2024-08-01", "2024-08-20", false)]
    [InlineData("2025-01-10", "2025-01-20", false)]
    public void The_same_days_of_another_year_are_the_same_question(string from, string to, bool same)
    {
        var seen = new RepeatedClosure(new(2026, 12, 20), new(2027, 1, 6), 3, 20);

        Assert.Equal(same, seen.Meets(Day(from), Day(to)));
    }

    [Fact]
    public void An_order_that_has_waited_longer_than_all_that_were_learnt_from_was_left_out()
    {
        var lead = new StoredLead(Guid.CreateVersion7(), Guid.CreateVersion7());
        lead.LearnFrom(Today, new LeadTimePrior(56, 77), [60, 70], [12, 40], 0, 2);

        Assert.True(lead.IsLearntFrom(40, Today));
        Assert.True(lead.IsLearntFrom(47, Today.PlusDays(7)));
        Assert.True(lead.IsLearntFrom(3, Today.PlusDays(3)));
        Assert.False(lead.IsLearntFrom(400, Today));
    }

    private static LocalDate Day(string iso) => NodaTime.Text.LocalDatePattern.Iso.Parse(iso).Value;

    private static DateCheck OfNewYear(LocalDate from, LocalDate to) =>
        DateCheck.OfWorkshop(Guid.CreateVersion7(), Guid.CreateVersion7(), new RepeatedClosure(from, to, 3, 20), Today);
}
