using Bunit;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.MyHair;

public sealed class OwnTakenTests : UiTestContext
{
    [Fact]
    public void Whoever_came_second_for_a_time_reads_that_it_is_gone_and_that_others_follow() =>
        Assert.Equal(
            "Somebody was faster: that time is gone. These are the nearest that are free.",
            Render<OwnTaken>(p => p.Add(t => t.Own, null).Add(t => t.Today, new LocalDate(2027, 2, 3)))
                .Find("[role=alert]")
                .TextContent.Trim()
        );
}
