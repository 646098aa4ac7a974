using Bunit;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

public sealed class HoldBarTests : UiTestContext
{
    private static readonly LocalDate Applied = new(2031, 9, 1);

    [Theory]
    [InlineData(10, "Day 10 since Mon 1 Sept. Window opens Mon 29 Sept, due Fri 3 Oct.")]
    [InlineData(40, "Day 40 since Mon 1 Sept. Window open until Mon 27 Oct, due Fri 3 Oct.")]
    [InlineData(66, "Day 66 since Mon 1 Sept. Window closed Mon 27 Oct, 10 days over.")]
    public void The_bar_says_what_it_shows(int day, string expected) =>
        Assert.Equal(expected, Show(day).Find("svg").GetAttribute("aria-label"));

    [Fact]
    public void Only_days_beyond_the_window_are_striped()
    {
        Assert.Empty(Show(56).FindAll(".beyond"));
        Assert.Single(Show(57).FindAll(".beyond"));
    }

    [Fact]
    public void A_lift_stops_the_bar_where_it_happened()
    {
        var bar = Render<HoldBar>(p =>
            p.Add(b => b.Bond, WearScene.Bond(Applied, lifted: Applied.PlusDays(20))).Add(b => b.Today, Applied.PlusDays(25))
        );
        Assert.Single(bar.FindAll(".lift"));
        Assert.Equal("Day 20 since Mon 1 Sept. Lifted Sun 21 Sept.", bar.Find("svg").GetAttribute("aria-label"));
    }

    [Fact]
    public void A_bond_a_year_late_still_leaves_half_the_bar_for_its_window() =>
        Assert.Equal("50%", Show(365).Find(".track").GetAttribute("x2"));

    private IRenderedComponent<HoldBar> Show(int day) =>
        Render<HoldBar>(p => p.Add(bar => bar.Bond, WearScene.Bond(Applied)).Add(bar => bar.Today, Applied.PlusDays(day)));
}
