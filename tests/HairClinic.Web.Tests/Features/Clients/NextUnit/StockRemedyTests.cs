using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Tests.Features.Units;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.NextUnit;

namespace HairClinic.Web.Tests.Features.Clients.NextUnit;

/// <summary>What a unit of the stock would do for a client is what it does once it is theirs.</summary>
public sealed class StockRemedyTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_chance_that_was_said_for_a_unit_of_the_stock_is_the_chance_once_it_is_given(bool ofTheirKind)
    {
        HairSystem stock = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.Scene.AddBond(b.Una, b.Scene.AddUnit(b.Una, b.Kind, Today.PlusDays(-161)), Today.PlusDays(-160), b.Adhesive);
                stock = b.InHouse("N-1", null, kind: ofTheirKind ? b.Kind : b.OtherKind);
            }
        );

        var before = await PlanAsync(book);
        var said = Assert.Single(before.Remedies.Single(r => r.Kind == RemedyKind.OffTheShelf).Stock);
        await book.TakeAsync(stock, UnitStepKind.GivenToClient, i => i.ClientId = book.Una.Id);
        var after = await PlanAsync(book);

        Assert.True(said.Then < before.Outlook.GapIfOrderedToday);
        Assert.Equal(said.Then, Math.Max(after.Outlook.GapIfOrderedToday, after.Outlook.GapBeforeArrival), 9);
        // What tides over is not what they are to have next.
        Assert.Equal(("Everyday", "Everyday"), (before.KindName, after.KindName));
    }

    private static async Task<Slice.Plan> PlanAsync(UnitBook book) =>
        (await book.Clinic.UseAsync<Slice, Slice.Screen?>(book.AtDesk, s => s.OpenAsync(book.Una.Id, Cancel)))!.Plan!;
}
