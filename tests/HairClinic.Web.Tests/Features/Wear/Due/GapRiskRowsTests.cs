using HairClinic.Domain.Clients;
using HairClinic.Domain.Replacement;
using HairClinic.Web.Features.Wear;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Wear.Due;

/// <summary>Those at risk of a day without hair are listed by the days to expect, whatever their bond does.</summary>
public sealed class GapRiskRowsTests(PgServer server)
{
    private readonly DueList _list = new();

    [Fact]
    public async Task The_most_days_to_expect_come_first_and_whoever_is_safe_is_not_listed()
    {
        await using var clinic = await OpenAsync(l =>
        {
            Risk(l, "some", 4);
            Risk(l, "many", 40);
            Risk(l, "safe", 0.1, late: false);
        });

        var screen = await _list.OpenAsync(clinic, DuePart.AtRisk);

        Assert.Equal(["many", "some"], screen.Risks.Select(r => r.Code));
        Assert.Equal(2, screen.Counts.CountOf(DuePart.AtRisk));
        Assert.Empty(screen.Rows);
    }

    [Fact]
    public async Task A_row_of_the_list_says_that_its_client_is_at_risk_too()
    {
        await using var clinic = await OpenAsync(l =>
        {
            Risk(l, "some", 4, daysAgo: 43);
            Risk(l, "safe", 0.1, late: false, daysAgo: 43);
        });

        var screen = await _list.OpenAsync(clinic);

        Assert.Equal([("safe", false), ("some", true)], screen.Rows.Select(r => (r.Code, r.AtRisk)).Order());
    }

    [Fact]
    public async Task Who_lacks_only_the_spare_that_is_always_kept_is_a_part_of_its_own_and_says_so_in_the_list()
    {
        await using var clinic = await OpenAsync(l =>
        {
            Risk(l, "some", 4, daysAgo: 43, sparesMissing: 1);
            Risk(l, "spare", 0.2, late: false, daysAgo: 43, sparesMissing: 1);
            Risk(l, "two", 0.3, late: false, daysAgo: 43, sparesMissing: 2);
            Risk(l, "safe", 0.1, late: false, daysAgo: 43);
        });

        var (all, spares) = (await _list.OpenAsync(clinic), await _list.OpenAsync(clinic, DuePart.Spares));

        Assert.Equal(["two", "spare"], spares.Risks.Select(r => r.Code));
        Assert.Equal((1, 2), (all.Counts.CountOf(DuePart.AtRisk), all.Counts.CountOf(DuePart.Spares)));
        Assert.Equal(["spare", "two"], all.Rows.Where(r => r.SpareMissing).Select(r => r.Code).Order());
        Assert.Equal(["some"], all.Rows.Where(r => r.AtRisk).Select(r => r.Code));
        Assert.All(spares.Risks, r => Assert.Equal(ReorderVerdict.SpareMissing, r.ReorderAdviceOn(_list.Today, 0.05).Verdict));
    }

    [Fact]
    public async Task Page_by_page_everyone_at_risk_comes_once_and_in_order()
    {
        await using var clinic = await OpenAsync(l =>
        {
            for (var i = 0; i < 65; i++)
                Risk(l, $"R{i:00}", 1 + i % 7);
        });
        List<ClientGapRisk> seen = [];
        GapRiskCursor? after = null;
        do
        {
            var page = await _list.OpenRisksAsync(clinic, after is null ? null : GapRiskCursor.Parse(after.ToString()));
            (seen, after) = ([.. seen, .. page.Risks], page.NextRisk);
        } while (after is not null);

        Assert.Equal(65, seen.DistinctBy(r => r.ClientId).Count());
        Assert.Equal(seen.OrderByDescending(r => r.Plan.ExpectedDaysWithoutHair).ThenBy(r => r.ClientId), seen);
    }

    [Fact]
    public async Task Who_left_and_other_salons_clients_are_not_on_it()
    {
        await using var clinic = await OpenAsync(l =>
        {
            Risk(l, "left", 4).Leave(l.Today);
            Risk(l, "quay", 4, atQuay: true);
            Risk(l, "here", 4);
        });

        Assert.Equal(["here"], (await _list.OpenAsync(clinic, DuePart.AtRisk)).Risks.Select(r => r.Code));
    }

    private Task<TestClinic> OpenAsync(Action<DueList> lay) => TestClinic.OpenAsync(server, _list.Lay(lay));

    private static Client Risk(
        DueList list,
        string code,
        double days,
        bool late = true,
        int daysAgo = 1,
        bool atQuay = false,
        int sparesMissing = 0
    )
    {
        var (client, _) = list.Bonded(code, daysAgo, atQuay ? list.Quayside : null);
        var answer = new ReorderAnswer(late ? 0.4 : 0.01, late ? null : 60, days, false);
        list.Plan(client, answer, late ? null : list.Today.PlusDays(60), sparesMissing);
        return client;
    }
}
