using Bunit;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.Card;

namespace HairClinic.Web.Tests.Features.Clients.Card;

public sealed class CardVisitsTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    [Fact]
    public void A_visit_is_told_in_its_own_salons_time()
    {
        var list = RenderList([Visit(Instant.FromUtc(2027, 2, 1, 9, 30), "Europe/Madrid")]);

        Assert.Contains("10:30", list.Find("li strong").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Old_visits_stay_folded_away_and_none_is_lost()
    {
        var list = RenderList([.. Enumerable.Range(1, 11).Select(day => Visit(Instant.FromUtc(2027, 1, day, 9, 0), "Europe/London"))]);

        Assert.Equal(3, list.FindAll("details li").Count);
        Assert.Equal(11, list.FindAll("li").Count);
    }

    private IRenderedComponent<CardVisits> RenderList(IReadOnlyList<Slice.VisitRow> visits) =>
        Render<CardVisits>(p => p.Add(c => c.Visits, visits).Add(c => c.Today, Today));

    private static Slice.VisitRow Visit(Instant at, string zone) =>
        new(
            at.InUtc().Date,
            at,
            at + Duration.FromHours(1),
            zone,
            "Quay",
            "Rebond",
            ServicePurpose.Rebond,
            "Tam Rowe",
            VisitState.Done,
            null,
            null,
            false
        );
}
