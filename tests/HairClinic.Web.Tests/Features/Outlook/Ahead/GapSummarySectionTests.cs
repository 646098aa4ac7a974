using Bunit;
using HairClinic.Web.Features.Outlook;
using HairClinic.Web.Tests.Ui;

namespace HairClinic.Web.Tests.Features.Outlook.Ahead;

public sealed class GapSummarySectionTests : UiTestContext
{
    [Fact]
    public void A_book_that_saw_next_to_nothing_tells_no_percent_and_how_much_it_saw()
    {
        var section = Show(clients: 58, days: 1248);

        Assert.Empty(section.FindAll(".vast"));
        Assert.DoesNotContain("%", section.Find("p.lede").TextContent, StringComparison.Ordinal);
        Assert.Contains("58 clients for 41 months in all", section.Find("p.lede").TextContent, StringComparison.Ordinal);
        Assert.Contains("can’t tell yet", section.Find("tbody td:nth-child(2)").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rate_says_over_how_many_months_it_was_seen()
    {
        var section = Show(clients: 58, days: 58 * 365);

        Assert.Contains("%", section.Find(".vast").TextContent, StringComparison.Ordinal);
        Assert.Contains("696 months in all", section.Find("p.lede").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<GapSummarySection> Show(int clients, int days) =>
        Render<GapSummarySection>(p =>
            p.Add(
                s => s.Promise,
                new GapReport(
                    [new SalonPastGaps(Guid.CreateVersion7(), "Elm Row") { Kept = new(clients, clients), DaysWatched = days }],
                    []
                )
            )
        );
}
