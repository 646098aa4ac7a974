using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class ReorderAdviceTests
{
    private static readonly LocalDate Today = new(2031, 3, 4);

    [Theory]
    // Worn out as it is, a unit on the head is hair; so is one in house that could go on.
    [InlineData(true, 0, ReorderVerdict.OrderNow)]
    [InlineData(true, 1, ReorderVerdict.OrderNow)]
    [InlineData(false, 1, ReorderVerdict.OrderNow)]
    [InlineData(false, 0, ReorderVerdict.WithoutHair)]
    public void Without_hair_is_only_who_has_nothing_on_the_head_and_nothing_in_house(bool onHead, int inHand, ReorderVerdict verdict) =>
        Assert.Equal(verdict, Of(null, onHead, inHand).Verdict);

    [Theory]
    [InlineData(0, ReorderVerdict.OrderSoon)]
    [InlineData(1, ReorderVerdict.OrderSoon)]
    [InlineData(30, ReorderVerdict.OrderSoon)]
    [InlineData(31, ReorderVerdict.Wait)]
    public void A_last_day_to_order_that_is_near_is_something_to_do(int days, ReorderVerdict verdict)
    {
        var standing = Of(Today.PlusDays(days));

        Assert.Equal((verdict, Today.PlusDays(days)), (standing.Verdict, standing.OrderBy));
        Assert.Equal(verdict == ReorderVerdict.OrderSoon, standing.IsToDo);
        Assert.False(standing.AtRisk);
    }

    [Fact]
    public void A_last_day_that_was_calculated_yesterday_and_has_passed_is_not_told_as_if_it_were_to_come()
    {
        var standing = Of(Today.PlusDays(-1));

        Assert.Equal((ReorderVerdict.OrderNow, null), (standing.Verdict, standing.OrderBy));
        Assert.True(standing.AtRisk);
    }

    [Fact]
    public void What_lies_before_the_order_in_flight_comes_before_any_day_to_order()
    {
        Assert.Equal(ReorderVerdict.OrderMayComeTooLate, Of(Today.PlusDays(200), before: 0.06).Verdict);
        Assert.Equal(ReorderVerdict.Wait, Of(Today.PlusDays(200), before: 0.05).Verdict);
    }

    [Fact]
    public void A_missing_spare_is_something_to_do_but_no_risk_and_comes_after_what_is()
    {
        var standing = new ReorderAdvice(Today, Today.PlusDays(90), true, 1, 0, 0, 0.05, sparesMissing: 1) { GapIfOrderedToday = 0.01 };
        var late = new ReorderAdvice(Today, null, true, 1, 0, 0, 0.05, sparesMissing: 1) { GapIfOrderedToday = 0.2 };

        Assert.Equal((ReorderVerdict.SpareMissing, true, false), (standing.Verdict, standing.IsToDo, standing.AtRisk));
        Assert.Equal(ReorderVerdict.OrderNow, late.Verdict);
    }

    private static ReorderAdvice Of(LocalDate? orderBy, bool onHead = true, int inHand = 1, double before = 0) =>
        new(Today, orderBy, onHead, inHand, inFlight: 1, before, alpha: 0.05) { GapIfOrderedToday = 0.2 };
}
