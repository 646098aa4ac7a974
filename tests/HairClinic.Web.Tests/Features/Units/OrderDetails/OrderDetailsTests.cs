using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Web.Fence;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.OrderDetails;

namespace HairClinic.Web.Tests.Features.Units.OrderDetails;

public sealed class OrderDetailsTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private WorkshopOrder _order = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_may_not_see_a_client_sees_that_there_is_one_more_and_neither_name_nor_price()
    {
        await using var book = await OpenAsync();

        var desk = (await OpenAsync(book, book.AtDesk))!;
        var owner = (await OpenAsync(book, book.AsOwner))!;
        var elsewhere = (await OpenAsync(book, book.AsElsewhere))!;

        Assert.Equal((1, 1, 60_000L), (desk.Lines.Count, desk.Unseen, desk.Total!.Value));
        Assert.Equal((2, 0, 120_000L), (owner.Lines.Count, owner.Unseen, owner.Total!.Value));
        Assert.Equal("Farah Test", Assert.Single(elsewhere.Lines).Client!.Name);
        Assert.Equal(("Una Test", true), (Assert.Single(desk.Lines).Client!.Name, desk.AnyInFlight));
        Assert.Equal(("Workshop North", "Elm Row", true), (desk.Workshop, desk.Salon, desk.MayWrite));
    }

    [Fact]
    public async Task What_was_promised_for_the_whole_stands_with_who_said_so_and_a_line_says_what_is_waited_for()
    {
        await using var book = await OpenAsync();

        var screen = (await OpenAsync(book, book.AtDesk))!;

        Assert.Equal(("Ines", Today.PlusDays(9)), (screen.Order.Promises.Single().SaidBy, screen.Order.Promises.Single().PromisedFor));
        Assert.Equal(UnitStepKind.Arrived, screen.Lines[0].Next);
    }

    [Fact]
    public async Task A_trainee_sees_no_money_and_another_practice_no_order()
    {
        await using var book = await OpenAsync();
        await using var other = await UnitBook.OpenAsync(server);

        var trainee = (await OpenAsync(book, book.AsTrainee))!;
        Assert.Equal((false, false, 0, 2), (trainee.SeesMoney, trainee.MayWrite, trainee.Lines.Count, trainee.Unseen));
        Assert.Null(await OpenAsync(other, other.AsOwner));
    }

    private Task<Slice.Screen?> OpenAsync(UnitBook book, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(_order.Id, Cancel));

    private Task<UnitBook> OpenAsync() =>
        UnitBook.OpenAsync(
            server,
            b =>
            {
                _order = b.Order("7", Today.PlusDays(-30), b.Draft("U-1", b.Una), b.Draft("U-2", b.Far));
                _order.Promise(Guid.CreateVersion7(), Today.PlusDays(9), Today.PlusDays(-20), "Ines", Today);
            }
        );
}
