using Bunit;
using HairClinic.Domain.Wear;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

public sealed class WearLineTests : UiTestContext
{
    [Fact]
    public void The_picture_says_the_same_as_its_sentence()
    {
        var line = Show(WearScene.Line(WearScene.Worn, WearScene.OnOrder));
        var svg = line.Find("svg[role=img]");
        var sentence = WearLineSentence.Describe(WearScene.Line(WearScene.Worn, WearScene.OnOrder), Localizer, forClient: false);
        Assert.Equal(sentence, line.Find("#" + svg.GetAttribute("aria-describedby")).TextContent);
        Assert.StartsWith("The wear line", line.Find("#" + svg.GetAttribute("aria-labelledby")).TextContent, StringComparison.Ordinal);
        Assert.Equal(sentence, line.Find("figcaption").TextContent);
    }

    [Fact]
    public void Each_unit_has_a_lane_and_each_bond_a_bar()
    {
        var line = Show(WearScene.Line(WearScene.Worn, WearScene.OnOrder));
        Assert.Equal(2, line.FindAll(".lane").Count);
        Assert.Equal(2, line.FindAll(".bond").Count);
        Assert.Single(line.FindAll(".lift"));
        Assert.Equal(["U-2Thin skin", "U-3Lace"], line.FindAll(".name").Select(name => name.TextContent.Trim()));
    }

    [Fact]
    public void A_lifted_bond_ends_at_the_lift_and_is_open_from_there_to_its_removal()
    {
        var lane = new WearLineUnit("U-1", "Lace") { Bonds = [WearScene.Bond(new(2031, 1, 11), new(2031, 1, 31), new(2031, 1, 21))] };
        var line = Show(new(new(2031, 1, 1), new(2031, 4, 11), new(2031, 4, 1), [lane], []));
        Assert.Equal("10%", line.Find(".bond").GetAttribute("x"));
        Assert.Equal("10%", line.Find(".bond").GetAttribute("width"));
        Assert.Equal(("20%", "30%"), (line.Find(".lift line").GetAttribute("x1"), line.Find(".lift line").GetAttribute("x2")));
    }

    [Fact]
    public void An_order_is_dotted_until_it_arrives_and_solid_after()
    {
        var arrived = Show(WearScene.Line(WearScene.Worn));
        Assert.Equal(arrived.Find(".ordered").GetAttribute("x2"), arrived.Find(".rail").GetAttribute("x1"));
        var waiting = Show(WearScene.Line(WearScene.OnOrder));
        Assert.Empty(waiting.FindAll(".rail"));
        Assert.Contains("likely by Thu 25 Mar 2032", waiting.Find(".promise").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_open_bond_carries_its_window_and_its_due_day()
    {
        var window = Show(WearScene.Line(WearScene.Worn)).Find(".window");
        Assert.Contains("due Wed 3 Dec", window.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("overdue", window.ClassName!, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_model_nothing_is_predicted()
    {
        var line = Show(WearScene.Line(WearScene.Worn, WearScene.OnOrder));
        Assert.Empty(line.FindAll(".fading, .band, .post, .gap"));
    }

    [Fact]
    public void With_a_model_the_bar_fades_the_band_brackets_and_the_gap_is_named_in_days()
    {
        var today = WearScene.Today;
        var worn = WearScene.Worn with
        {
            Fade = [new(today, 1), new(today.PlusDays(50), 0.5), new(today.PlusDays(100), 0)],
            Band = new(today.PlusDays(40), today.PlusDays(90)),
            ReorderBy = today.PlusDays(14),
        };
        var line = Show(WearScene.Line(worn) with { Gap = new(today.PlusDays(100), today.PlusDays(112)) });
        Assert.Equal(
            ["0:1", "0.5:0.5", "1:0"],
            line.FindAll("stop").Select(stop => $"{stop.GetAttribute("offset")}:{stop.GetAttribute("stop-opacity")}")
        );
        Assert.Single(line.FindAll(".band"));
        Assert.Contains("reorder by Tue 9 Dec", line.Find(".post").TextContent, StringComparison.Ordinal);
        Assert.Contains("12 days with no good unit", line.Find(".gap").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_in_the_picture_carries_a_style_of_its_own() =>
        Assert.Empty(Show(WearScene.Line(WearScene.Worn, WearScene.OnOrder)).FindAll("[style]"));

    [Fact]
    public void A_client_sees_no_serial() =>
        Assert.DoesNotContain(
            "U-",
            Render<WearLine>(p => p.Add(line => line.Model, WearScene.Line(WearScene.Worn)).Add(line => line.ForClient, true)).Markup,
            StringComparison.Ordinal
        );

    private IRenderedComponent<WearLine> Show(WearLineData model) => Render<WearLine>(p => p.Add(line => line.Model, model));
}
