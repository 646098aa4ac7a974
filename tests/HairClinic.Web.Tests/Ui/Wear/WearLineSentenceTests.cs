using HairClinic.Domain.Wear;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

public sealed class WearLineSentenceTests : UiTestContext
{
    [Fact]
    public void The_worn_unit_its_due_day_and_the_order_are_told_in_words() =>
        Assert.Equal(
            "U-2 (Thin skin) has been on the head since Sat 1 Nov. Its rebond is due Wed 3 Dec; the window is Sat 29 Nov to Sat 27 Dec. "
                + "U-3 (Lace) is on order, expected between Fri 20 Feb 2032 and Thu 25 Mar 2032. 2 bonds are drawn; 1 of them lifted.",
            Say(WearScene.Line(WearScene.Worn, WearScene.OnOrder))
        );

    [Fact]
    public void A_client_is_told_no_serial()
    {
        var said = Say(WearScene.Line(WearScene.Worn, WearScene.OnOrder), forClient: true);
        Assert.DoesNotContain("U-", said, StringComparison.Ordinal);
        Assert.StartsWith("Thin skin has been on the head", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bond_past_its_window_is_overdue() =>
        Assert.Contains(
            "overdue",
            Say(WearScene.Line(new WearLineUnit("U-9", "Lace") { Bonds = [WearScene.Bond(new(2031, 9, 1))] })),
            StringComparison.Ordinal
        );

    [Fact]
    public void The_day_a_window_closes_is_not_yet_overdue()
    {
        var bond = WearScene.Bond(WearScene.Today.PlusWeeks(-8));
        Assert.Equal(WearScene.Today, bond.Closes);
        Assert.DoesNotContain("overdue", Say(WearScene.Line(new WearLineUnit("U-9", "Lace") { Bonds = [bond] })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_bond_that_lifted_is_said_to_have_lifted() =>
        Assert.Contains(
            "It lifted on Thu 20 Nov.",
            Say(WearScene.Line(new WearLineUnit("U-9", "Lace") { Bonds = [WearScene.Bond(new(2031, 11, 1), lifted: new(2031, 11, 20))] })),
            StringComparison.Ordinal
        );

    [Fact]
    public void Nothing_bonded_is_said_plainly() =>
        Assert.Equal(
            "Nothing is bonded today. U-4 (Lace) has been at hand since Mon 10 Nov.",
            Say(WearScene.Line(new WearLineUnit("U-4", "Lace") { Arrived = new(2031, 11, 10) }))
        );

    [Theory]
    [InlineData(1, false, "If nothing is done, no unit still wears well on Fri 20 Feb 2032.")]
    [InlineData(22, false, "If nothing is done, no unit still wears well from Fri 20 Feb 2032 on, for 22 days.")]
    [InlineData(1, true, "there will be one day without hair")]
    [InlineData(22, true, "there will be 22 days without hair")]
    public void Days_to_come_are_without_hair_only_on_a_bare_head(int days, bool bare, string expected)
    {
        var from = new LocalDate(2032, 2, 20);
        Assert.Contains(
            expected,
            Say(WearScene.Line(WearScene.Worn) with { Gap = new(from, from.PlusDays(days), bare) }),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_predicted_end_and_the_day_to_reorder_are_told_when_there_is_a_model() =>
        Assert.Contains(
            "It will most likely wear out between Wed 14 Jan 2032 and Sat 13 Mar 2032. The next one is to be ordered by Tue 9 Dec.",
            Say(WearScene.Line(WearScene.Worn with { Band = new(new(2032, 1, 14), new(2032, 3, 13)), ReorderBy = new(2031, 12, 9) })),
            StringComparison.Ordinal
        );

    private string Say(WearLineData model, bool forClient = false) => WearLineSentence.Describe(model, Localizer, forClient);
}
