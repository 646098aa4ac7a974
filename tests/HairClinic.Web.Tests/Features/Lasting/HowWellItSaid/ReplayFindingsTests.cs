using Bunit;
using HairClinic.Domain.Replay;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Lasting.HowWellItSaid;

/// <summary>The sentences, as somebody reads them aloud.</summary>
public sealed class ReplayFindingsTests : UiTestContext
{
    private static readonly PastReplayResult Little = new(new LocalDate(2027, 2, 3), new LocalDate(2025, 3, 1));

    [Fact]
    public void Days_without_hair_are_told_as_they_were_and_as_they_would_have_been()
    {
        var page = Show(
            Little with
            {
                Refits = 23,
                MonthsBetween = 1,
                EndedUnits = 80,
                ReplayedFrom = new LocalDate(2025, 4, 1),
                Gaps = new ReplayedGaps(60, 30000)
                {
                    PeopleWithout = 14,
                    DaysWithout = 96,
                    PeopleWithoutReplayed = 3,
                    DaysWithoutReplayed = 9,
                    Ordered = 150,
                    OrderedReplayed = 156,
                },
            }
        );

        Assert.Equal(
            "14 people were without hair for 96 days; by the program’s days 3, for 9 days.",
            page.Find("[data-finding=days]").TextContent.Trim()
        );
        Assert.Contains("Units ordered in that time: 150; by the program’s days: 156.", page.Markup, StringComparison.Ordinal);
        Assert.Contains("This is a replay: people would have acted otherwise", page.Find(".note").TextContent, StringComparison.Ordinal);
        Assert.Contains("It learnt anew at the end of each month, 23 times.", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_band_is_told_with_its_doubt_and_what_is_known_for_certain()
    {
        var page = Show(
            Little with
            {
                Bonds = new BandShare
                {
                    Count = 400,
                    Ended = 120,
                    Before = 22,
                    Inside = 90,
                    After = 8,
                    ShareBefore = 0.0984,
                    ShareInside = 0.81,
                    ErrorOfInside = 0.021,
                    FollowedPastMiddle = 60,
                },
            }
        );

        Assert.Equal(
            "81\u00a0% of bonds ended inside the 80 % band that would have been said (give or take 5 points).",
            page.Find("[data-finding=bonds]").TextContent.Trim()
        );
        Assert.Contains("9.8\u00a0% ended before the band and 9.2\u00a0% after it", page.Markup, StringComparison.Ordinal);
        Assert.Contains(
            "Of 400 looked at, known for certain: 22 before the band, 90 inside, 8 after it",
            page.Markup,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Where_nearly_all_come_off_before_nothing_is_said_of_the_upper_end()
    {
        var page = Show(
            Little with
            {
                Bonds = new BandShare
                {
                    Count = 400,
                    Ended = 40,
                    ShareBefore = 0.12,
                    ErrorOfBefore = 0.01,
                },
            }
        );

        Assert.StartsWith(
            "12\u00a0% of bonds ended before the 80 % band",
            page.Find("[data-finding=bonds]").TextContent.Trim(),
            StringComparison.Ordinal
        );
        Assert.Contains("How many end after the band nobody can say", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Chances_said_stand_beside_how_often_a_gap_came()
    {
        var page = Show(Little with { Chances = [new ChanceBin(0.02, 0.05, 0.034, 2, 50)], OrdersLeftOut = 7 });

        Assert.Equal(
            ["2\u00a0% to 5\u00a0%", "3.4\u00a0%", "50", "2"],
            page.FindAll("tbody tr")[0].Children.Take(4).Select(c => c.TextContent.Trim())
        );
        Assert.Contains("nobody can say yet: 7 orders", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_little_to_tell_says_how_much_it_takes()
    {
        var page = Show(
            Little with
            {
                Bonds = new BandShare { Count = 30, Ended = 4 },
            }
        );

        Assert.Empty(page.FindAll("[data-finding]"));
        Assert.Contains("Too few bonds have lifted to tell: 4. It takes 10.", page.Markup, StringComparison.Ordinal);
        Assert.Contains("Too few units have ended to tell: 0. It takes 10.", page.Markup, StringComparison.Ordinal);
        Assert.Contains("No order can tell yet", page.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<ReplayFindings> Show(PastReplayResult result) => Render<ReplayFindings>(p => p.Add(f => f.Result, result));
}
