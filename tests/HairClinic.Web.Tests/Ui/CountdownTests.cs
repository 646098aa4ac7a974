using Bunit;
using HairClinic.Web.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Ui;

public sealed class CountdownTests : UiTestContext
{
    private static readonly Instant Now = Instant.FromUtc(2031, 11, 25, 10, 0);

    [Theory]
    [InlineData(24 * 60 * 60, "24 h 0 min left")]
    [InlineData(3 * 60 * 60 + 125, "3 h 2 min left")]
    [InlineData(59 * 60 + 59, "59 min 59 s left")]
    [InlineData(0, "cured")]
    [InlineData(-5, "cured")]
    public void The_first_view_is_right_before_any_script_runs(int seconds, string expected) =>
        Assert.Equal(expected, Show(seconds).Find("time").TextContent);

    [Fact]
    public void The_instant_is_in_the_page_for_the_script_to_count_from() =>
        Assert.Equal("2031-11-25T10:01:00Z", Show(60).Find("time[data-countdown]").GetAttribute("datetime"));

    private IRenderedComponent<Countdown> Show(int seconds) =>
        Render<Countdown>(p => p.Add(c => c.Until, Now + Duration.FromSeconds(seconds)).Add(c => c.Now, Now).Add(c => c.Done, "cured"));
}
