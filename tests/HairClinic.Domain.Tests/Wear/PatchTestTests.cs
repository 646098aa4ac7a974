using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Hours and validity are common practice; sources differ and a product's label governs.</summary>
public sealed class PatchTestTests
{
    private static readonly PatchTestRule Usual = new();
    private static readonly Instant AppliedAt = Instant.FromUtc(2026, 1, 10, 9, 0);
    private static readonly LocalDate AppliedOn = new(2026, 1, 10);
    private static readonly PatchTestReadings Unread = new(AppliedAt, AppliedOn);
    private static readonly PatchTestReadings ReadOnce = Unread with { FirstReading = PatchTestReadingResult.Clear };
    private static readonly PatchTestReadings ReadTwice = ReadOnce with { SecondReading = PatchTestReadingResult.Clear };

    private static PatchTestVerdict JudgeAfter(PatchTestReadings? test, int hours, PatchTestRule? rule = null)
    {
        var bonding = AppliedAt + Duration.FromHours(hours);
        return (rule ?? Usual).Judge(test, bonding, bonding.InUtc().Date);
    }

    [Fact]
    public void Nobody_is_bonded_with_a_product_never_tried_on_them()
    {
        Assert.Equal(PatchTestVerdict.NeverTested, JudgeAfter(null, 100));
        Assert.True(PatchTestVerdict.NeverTested.Blocks());
    }

    [Fact]
    public void Bonding_before_the_48_hour_reading_is_blocked()
    {
        Assert.Equal(PatchTestVerdict.TooSoon, JudgeAfter(Unread, 47));
        Assert.Equal(PatchTestVerdict.TooSoon, JudgeAfter(ReadOnce, 47));
        Assert.Equal(PatchTestVerdict.NotRead, JudgeAfter(Unread, 48));
        Assert.True(PatchTestVerdict.TooSoon.Blocks() && PatchTestVerdict.NotRead.Blocks());
    }

    [Fact]
    public void Bonding_between_the_readings_is_warned_about()
    {
        Assert.Equal(PatchTestVerdict.SecondReadingToCome, JudgeAfter(ReadOnce, 48));
        Assert.Equal(PatchTestVerdict.SecondReadingToCome, JudgeAfter(ReadTwice, 95));
        Assert.Equal(PatchTestVerdict.SecondReadingMissed, JudgeAfter(ReadOnce, 96));
        Assert.True(PatchTestVerdict.SecondReadingToCome.Warns() && PatchTestVerdict.SecondReadingMissed.Warns());
        Assert.False(PatchTestVerdict.SecondReadingToCome.Blocks());
    }

    [Fact]
    public void Two_clear_readings_in_date_are_clear()
    {
        Assert.Equal(PatchTestVerdict.Clear, JudgeAfter(ReadTwice, 96));
        Assert.False(PatchTestVerdict.Clear.Blocks() || PatchTestVerdict.Clear.Warns());
    }

    [Fact]
    public void A_late_reading_alone_is_warned_about()
    {
        var late = Unread with { SecondReading = PatchTestReadingResult.Clear };

        Assert.Equal(PatchTestVerdict.NotRead, JudgeAfter(late, 95));
        Assert.Equal(PatchTestVerdict.FirstReadingMissed, JudgeAfter(late, 96));
        Assert.True(PatchTestVerdict.FirstReadingMissed.Warns());
    }

    [Fact]
    public void A_reaction_blocks_at_either_reading_and_for_good()
    {
        Assert.Equal(PatchTestVerdict.Reacted, JudgeAfter(Unread with { FirstReading = PatchTestReadingResult.Reaction }, 60));
        Assert.Equal(PatchTestVerdict.Reacted, JudgeAfter(ReadOnce with { SecondReading = PatchTestReadingResult.Reaction }, 120));
        Assert.Equal(PatchTestVerdict.Reacted, JudgeAfter(ReadOnce with { SecondReading = PatchTestReadingResult.Reaction }, 20_000));
        Assert.True(PatchTestVerdict.Reacted.Blocks());
    }

    [Fact]
    public void Expiry_is_judged_on_the_visit_s_day()
    {
        var late = AppliedAt + Duration.FromDays(181);

        Assert.Equal(PatchTestVerdict.Clear, Usual.Judge(ReadTwice, late, new(2026, 7, 10)));
        Assert.Equal(PatchTestVerdict.Expired, Usual.Judge(ReadTwice, late, new(2026, 7, 11)));
        Assert.True(PatchTestVerdict.Expired.Blocks());
    }

    [Fact]
    public void Six_months_from_the_end_of_August_end_with_February() =>
        Assert.Equal(new LocalDate(2027, 2, 28), Usual.LastValidDay(new(Instant.FromUtc(2026, 8, 31, 9, 0), new(2026, 8, 31))));

    [Fact]
    public void A_practice_may_edit_the_rule_but_never_below_the_label()
    {
        var practice = new PatchTestRule(48, 72, 12);
        var label = new PatchTestRule(72, 96, 3);

        Assert.Equal(new PatchTestRule(72, 96, 3), practice.CombineStrictest(label));
        Assert.Equal(new PatchTestRule(72, 120, 2), new PatchTestRule(72, 120, 2).CombineStrictest(label));
        Assert.Equal(PatchTestVerdict.TooSoon, JudgeAfter(ReadOnce, 60, practice.CombineStrictest(label)));
    }

    [Fact]
    public void A_visit_is_held_while_its_reading_falls_before_it_and_firm_once_that_is_clear()
    {
        var (visit, day) = (AppliedAt + Duration.FromHours(72), new LocalDate(2026, 1, 13));

        Assert.Equal(BookingFirmness.Held, Usual.BookingFirmnessOf(Unread, visit, day));
        Assert.Equal(BookingFirmness.Firm, Usual.BookingFirmnessOf(ReadOnce, visit, day));
    }

    [Fact]
    public void A_visit_the_test_cannot_allow_goes_back_to_the_desk()
    {
        var (visit, day) = (AppliedAt + Duration.FromHours(40), new LocalDate(2026, 1, 12));
        var reacted = Unread with { FirstReading = PatchTestReadingResult.Reaction };

        Assert.Equal(BookingFirmness.BackToDesk, Usual.BookingFirmnessOf(Unread, visit, day));
        Assert.Equal(BookingFirmness.BackToDesk, Usual.BookingFirmnessOf(null, visit, day));
        Assert.Equal(BookingFirmness.BackToDesk, Usual.BookingFirmnessOf(reacted, visit + Duration.FromDays(9), day.PlusDays(9)));
        Assert.Equal(BookingFirmness.BackToDesk, Usual.BookingFirmnessOf(ReadTwice, visit, new(2026, 7, 11)));
    }

    [Theory]
    [InlineData(23, 96, 6)]
    [InlineData(48, 47, 6)]
    [InlineData(48, 96, 0)]
    [InlineData(169, 200, 6)]
    [InlineData(48, 337, 6)]
    [InlineData(48, 96, 25)]
    public void A_rule_without_sense_is_refused(int first, int second, int months) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PatchTestRule(first, second, months));

    [Theory]
    [InlineData(24, 24, 1)]
    [InlineData(168, 336, 24)]
    public void A_rule_at_its_bounds_is_taken(int first, int second, int months)
    {
        var rule = new PatchTestRule(first, second, months);

        Assert.Equal((first, second, months), (rule.FirstReadingHours, rule.SecondReadingHours, rule.ValidMonths));
    }
}
