using HairClinic.Domain.Wear;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

public sealed class DueReasonTextTests : UiTestContext
{
    private static readonly LocalDate From = new(2027, 3, 2);
    private static readonly LocalDate To = new(2027, 4, 13);
    private static readonly LocalDate Today = new(2027, 3, 10);

    [Theory]
    [InlineData(
        DueRuleName.HoldWindow,
        4,
        6,
        "This base and adhesive hold 4 to 6 weeks from the day of the bond, Tue 2 March; the window closes on Tue 13 April."
    )]
    [InlineData(DueRuleName.TargetFromPrior, 32, null, "Four in five bonds of this kind still hold after 32 days, on Tue 13 April.")]
    [InlineData(
        DueRuleName.TargetCappedAtCloses,
        null,
        null,
        "That is after the window closes, so the window’s last day counts: Tue 13 April."
    )]
    [InlineData(
        DueRuleName.TargetFromOwnBonds,
        30,
        3,
        "By this client’s own 3 bonds before, four in five still hold after 30 days, on Tue 13 April; for a client not yet known it would be Tue 2 March."
    )]
    [InlineData(
        DueRuleName.TargetFromPractice,
        30,
        null,
        "By this practice’s own bonds, four in five of this kind still hold after 30 days, on Tue 13 April."
    )]
    [InlineData(DueRuleName.HeldUntilCured, 24, null, "No rebond before the bond has cured (24 hours): not before Tue 13 April.")]
    [InlineData(
        DueRuleName.PulledAheadOfEvent,
        5,
        null,
        "Moved ahead of an event of the client’s, to be fresh 5 days before it: Tue 13 April."
    )]
    [InlineData(
        DueRuleName.EventBeyondHold,
        917,
        990,
        "Of 1,000 such bonds 917 are expected to be sound on Tue 13 April, the last day of an event of the client’s; at least 990 are wanted."
    )]
    [InlineData(DueRuleName.KeptAheadOfEvent, 5, null, "Not later than Tue 13 April, to be fresh 5 days before an event of the client’s.")]
    [InlineData(
        DueRuleName.MovedAfterEvent,
        5,
        null,
        "Too late to be fresh 5 days before an event of the client’s, so it waits until after it: Tue 13 April."
    )]
    [InlineData(
        DueRuleName.FreshBondFallsShort,
        360,
        900,
        "Even a bond made on Tue 2 March may not last to Tue 13 April: of 1,000 such bonds 360 are expected to; plan for a lift."
    )]
    [InlineData(
        DueRuleName.TakeDownBeforeEvent,
        null,
        null,
        "The unit has to be off for an event of the client’s: take-down on Tue 13 April, and no new bond until somebody allows bonding again."
    )]
    [InlineData(
        DueRuleName.OpensEarlyAtTarget,
        null,
        null,
        "The window would open on Tue 2 March; here it opens earlier, on Tue 13 April."
    )]
    [InlineData(DueRuleName.MovedOutOfAbsence, null, null, "The client is away from Tue 2 March to Tue 13 April; nothing falls due then.")]
    [InlineData(DueRuleName.MovedToPreferredWeekday, null, null, "Moved from Tue 2 March to Tue 13 April, a weekday the client prefers.")]
    [InlineData(
        DueRuleName.MovedToOpenDay,
        null,
        null,
        "The salon is closed on Tue 2 March or the client away; the nearest open day is Tue 13 April."
    )]
    [InlineData(
        DueRuleName.MovedBeforeWindow,
        null,
        null,
        "No day inside the window is open; the last open day before it is Tue 13 April."
    )]
    [InlineData(DueRuleName.NoOpenDay, null, null, "No open day could be found near Tue 13 April: choose a day together with the client.")]
    public void Each_rule_says_in_a_sentence_what_it_did(DueRuleName rule, int? amount, int? upTo, string sentence) =>
        Assert.Equal(Shortened(sentence), DueReasonText.Of(new DueReason(rule, From, To, amount, upTo), Localizer, Today));

    [Fact]
    public void No_rule_is_without_a_sentence() =>
        Assert.All(
            Enum.GetValues<DueRuleName>(),
            rule => Assert.NotEmpty(DueReasonText.Of(new DueReason(rule, From, To, 1, 2), Localizer))
        );

    [Fact]
    public void The_reasons_are_told_in_the_order_they_acted()
    {
        DueReason[] reasons = [new(DueRuleName.HoldWindow, From, To, 4, 6), new(DueRuleName.MovedToOpenDay, From, To)];

        var told = DueReasonText.All(reasons, Localizer, Today);

        Assert.Collection(
            told,
            first => Assert.StartsWith("This base", first, StringComparison.Ordinal),
            second => Assert.StartsWith("The salon", second, StringComparison.Ordinal)
        );
    }

    // Month names are shortened by the reader's culture.
    private static string Shortened(string sentence) =>
        sentence.Replace("March", "Mar", StringComparison.Ordinal).Replace("April", "Apr", StringComparison.Ordinal);
}
