using Bunit;
using HairClinic.Domain.Replacement;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

/// <summary>Whose next unit must be seen to, on Wednesday 3 February 2027.</summary>
public sealed class GapRiskTableTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly SalonToday Elm = new(Guid.CreateVersion7(), "Elm Row", DateTimeZone.Utc, Today);

    [Fact]
    public void By_when_to_order_stands_in_a_column_of_its_own()
    {
        Assert.Contains("Tue 23 Feb", Cells(Row(Today.PlusDays(20)))[2], StringComparison.Ordinal);
        Assert.Equal("passed", Cells(Row(orderBy: null))[2]);
        // What was calculated some days ago may have passed since.
        Assert.Equal("passed", Cells(Row(Today.PlusDays(-1)))[2]);
    }

    [Fact]
    public void What_is_in_house_and_how_many_days_to_expect_are_said_in_the_same_words_everywhere()
    {
        var cells = Cells(Row(orderBy: null));

        Assert.Equal("4.3", cells[3]);
        Assert.Contains("1 in house, 0 on order", cells[4], StringComparison.Ordinal);
        Assert.Contains("lasts until", cells[4], StringComparison.Ordinal);
    }

    [Fact]
    public void A_spare_that_is_missing_is_ordered_now_whatever_day_the_chance_of_a_gap_leaves()
    {
        var cells = Cells(Row(Today.PlusDays(90), sparesMissing: 1));

        Assert.StartsWith("order a spare", cells[1], StringComparison.Ordinal);
        Assert.Equal("now, by the rule", cells[2]);
    }

    private List<string> Cells(ClientGapRisk row) =>
        [
            .. Render<GapRiskTable>(p =>
                    p.Add(t => t.Rows, [row])
                        .Add(t => t.Salons, new Dictionary<Guid, SalonToday> { [Elm.Id] = Elm })
                        .Add(t => t.Caption, "May lack a good unit")
                        .Add(t => t.Accepted, 0.05)
                )
                .FindAll("tbody td")
                .Select(c => c.TextContent.Trim()),
        ];

    private static ClientGapRisk Row(LocalDate? orderBy, int sparesMissing = 0)
    {
        var plan = new ReorderPlan(Guid.CreateVersion7(), Guid.CreateVersion7());
        plan.Store(
            new ReorderOutlook(Today.PlusDays(-2), Guid.CreateVersion7(), 0.05, new ReorderAnswer(0.3, null, 4.3, false), orderBy)
            {
                InHand = 1,
                SparesMissing = sparesMissing,
                HairEndDates = new HairEndDates(Today.PlusDays(10), Today.PlusDays(30), Today.PlusDays(60)),
            }
        );
        return new(plan.ClientId, Elm.Id, "C-1", "Nuria Quist", null, null, plan, null);
    }
}
