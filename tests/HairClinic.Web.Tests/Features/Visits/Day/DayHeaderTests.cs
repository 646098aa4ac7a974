using Bunit;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits.Day;

public sealed class DayHeaderTests : UiTestContext
{
    [Fact]
    public void The_printed_sheet_names_salon_and_day_and_says_nothing_that_is_wrong_tomorrow()
    {
        var today = new LocalDate(2027, 2, 3);
        var screen = new Web.Features.Visits.Day.Screen(
            "Elm Row",
            DateTimeZone.Utc,
            today.PlusDays(3),
            today,
            today.AtMidnight().InUtc().ToInstant(),
            [],
            null,
            [],
            [],
            []
        );

        var head = Render<DayHeader>(p => p.Add(h => h.Screen, screen));

        Assert.Equal("Elm Row, Sat 6 Feb 2027", head.Find("h1 .on-paper").TextContent);
        Assert.Contains("in 3 days", head.Find("h1 .no-print").TextContent, StringComparison.Ordinal);
        Assert.Equal("Print", head.Find("[data-print]").TextContent);
    }
}
