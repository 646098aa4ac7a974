using Bunit;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Tests.Ui;

public sealed class TabsTests : UiTestContext
{
    [Fact]
    public void The_first_tab_is_open_and_the_only_one_the_tab_key_stops_at()
    {
        var tabs = Show();
        Assert.Equal(["true", "false", "false"], tabs.FindAll("[role=tab]").Select(tab => tab.GetAttribute("aria-selected")!));
        Assert.Equal(["0", "-1", "-1"], tabs.FindAll("[role=tab]").Select(tab => tab.GetAttribute("tabindex")!));
        Assert.Equal("Showing units", tabs.Find("[role=tabpanel]").TextContent);
    }

    [Theory]
    [InlineData("ArrowRight", "bonds")]
    [InlineData("ArrowLeft", "care")]
    [InlineData("End", "care")]
    [InlineData("Home", "units")]
    public void Arrow_keys_go_round(string key, string expected)
    {
        var tabs = Show();
        tabs.FindAll("[role=tab]")[0].KeyDown(key);
        Assert.Equal($"Showing {expected}", tabs.Find("[role=tabpanel]").TextContent);
        Assert.Equal($"t-{expected}", tabs.Find("[role=tabpanel]").GetAttribute("aria-labelledby"));
    }

    [Fact]
    public void A_tap_opens_a_tab_and_tells_the_page()
    {
        string? opened = null;
        var tabs = Render<Tabs>(p => Fill(p).Add(t => t.ActiveChanged, key => opened = key));
        tabs.FindAll("[role=tab]")[1].Click();
        Assert.Equal("bonds", opened);
    }

    private IRenderedComponent<Tabs> Show()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        return Render<Tabs>(p => Fill(p));
    }

    private static ComponentParameterCollectionBuilder<Tabs> Fill(ComponentParameterCollectionBuilder<Tabs> p) =>
        p.Add(t => t.Id, "t")
            .Add(t => t.Label, "Record")
            .Add(t => t.Items, [new("units", "Units"), new("bonds", "Bonds"), new("care", "Care facts")])
            .Add(t => t.ChildContent, key => $"Showing {key}");
}
