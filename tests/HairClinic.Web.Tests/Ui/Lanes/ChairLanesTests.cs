using Bunit;
using HairClinic.Web.Ui.Lanes;

namespace HairClinic.Web.Tests.Ui.Lanes;

public sealed class ChairLanesTests : UiTestContext
{
    private static readonly LaneChair Window = new(Guid.Parse("00000000-0000-0000-0000-000000000001"), "Window");
    private static readonly LaneChair Alcove = new(Guid.Parse("00000000-0000-0000-0000-000000000002"), "Alcove");

    private static readonly LaneBlock Rebond = new(Guid.NewGuid(), Window.Id, 600, 690, "Ada Person", "Rebond", "booked", "/visits/7")
    {
        Segments = [new(true, 600, 640), new(false, 640, 660), new(true, 660, 690)],
    };

    [Fact]
    public void A_visit_is_a_link_with_who_when_what_and_its_state()
    {
        var block = Show().Find("a.block");
        Assert.Equal("/visits/7", block.GetAttribute("href"));
        foreach (var word in new[] { "10:00", "11:30", "Ada Person", "Rebond", "booked" })
            Assert.Contains(word, block.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_cover_can_blank_the_name() => Assert.Equal("Ada Person", Show().Find("a.block .private").TextContent);

    [Fact]
    public void Waits_are_drawn_thinner_than_hands_on_time()
    {
        var lanes = Show();
        var wait = lanes.Find("rect.waits");
        Assert.Equal(("44.44%", "22.22%"), (wait.GetAttribute("x"), wait.GetAttribute("width")));
        Assert.True(Height(wait) < Height(lanes.Find("rect.hands")));
    }

    [Fact]
    public void Free_time_is_a_link_when_the_page_says_where_it_leads()
    {
        var lanes = Render<ChairLanes>(p =>
        {
            Day(p);
            p.Add(l => l.GapHref, gap => $"/book?at={gap.StartMinute}");
        });
        Assert.Equal(["/book?at=540", "/book?at=690", "/book?at=540"], lanes.FindAll("a.free").Select(gap => gap.GetAttribute("href")!));
        Assert.Equal("+Alcove: 09:00–18:00 free", lanes.FindAll("a.free")[2].TextContent);
    }

    [Fact]
    public void Free_time_is_a_button_when_the_page_listens()
    {
        LaneGap? tapped = null;
        var lanes = Render<ChairLanes>(p =>
        {
            Day(p);
            p.Add(l => l.OnGap, gap => tapped = gap);
        });
        lanes.FindAll("button.free")[1].Click();
        Assert.Equal(new LaneGap(Window.Id, 690, 1080), tapped);
    }

    [Fact]
    public void The_now_line_stands_at_the_salons_clock_and_only_on_the_day_that_is_today()
    {
        Assert.Empty(Show().FindAll("svg.now"));
        Assert.Equal("50%", Show(now: 810).Find("svg.now line").GetAttribute("x1"));
    }

    [Fact]
    public void Each_lane_is_a_row_headed_by_its_chair() =>
        Assert.Equal(["Window", "Alcove"], Show().FindAll("th[scope=row]").Select(head => head.TextContent));

    [Fact]
    public void Nothing_carries_a_style_of_its_own() => Assert.Empty(Show(now: 810).FindAll("[style]"));

    private static double Height(AngleSharp.Dom.IElement rect) =>
        double.Parse(rect.GetAttribute("height")!, System.Globalization.CultureInfo.InvariantCulture);

    private IRenderedComponent<ChairLanes> Show(int? now = null) =>
        Render<ChairLanes>(p =>
        {
            Day(p);
            p.Add(l => l.NowMinute, now);
        });

    private static void Day(ComponentParameterCollectionBuilder<ChairLanes> p) =>
        p.Add(l => l.Label, "Chairs")
            .Add(l => l.Chairs, [Window, Alcove])
            .Add(l => l.Blocks, [Rebond])
            .Add(l => l.OpensMinute, 540)
            .Add(l => l.ClosesMinute, 1080);
}
