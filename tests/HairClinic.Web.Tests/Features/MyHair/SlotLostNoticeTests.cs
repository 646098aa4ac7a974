using Bunit;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.MyHair;

public sealed class SlotLostNoticeTests : UiTestContext
{
    [Fact]
    public void Whoever_came_second_for_a_time_reads_that_it_is_gone_and_that_others_follow() =>
        Assert.Equal(
            "Somebody was faster: that time is gone. These are the nearest that are free.",
            Render<SlotLostNotice>(p => p.Add(t => t.Own, null).Add(t => t.Today, new LocalDate(2027, 2, 3)))
                .Find("[role=alert]")
                .TextContent.Trim()
        );

    [Fact]
    public void Whoever_has_a_visit_then_reads_from_when_till_when_and_where_in_the_salon_s_own_time()
    {
        var own = new ClashingVisit(
            Instant.FromUtc(2027, 7, 5, 8, 15),
            Instant.FromUtc(2027, 7, 5, 9, 45),
            "Europe/London",
            "Elm Row",
            "Chair 2"
        );

        var said = Render<SlotLostNotice>(p => p.Add(t => t.Own, own).Add(t => t.Today, new LocalDate(2027, 7, 2)))
            .Find("[role=alert]")
            .TextContent;

        Assert.StartsWith("You have a visit then already: Mon 5 Jul, 09:15–10:45, Elm Row.", said.Trim(), StringComparison.Ordinal);
    }
}
