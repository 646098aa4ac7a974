using Bunit;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Tests.Ui;

public sealed class InteractiveMarkerTests : UiTestContext
{
    [Theory]
    [InlineData(true, "true")]
    [InlineData(false, "false")]
    public void The_page_says_whether_it_answers_taps(bool interactive, string expected)
    {
        BeInteractive(interactive);
        Assert.Equal(expected, Render<InteractiveMarker>().Find("span").GetAttribute("data-interactive"));
    }
}
