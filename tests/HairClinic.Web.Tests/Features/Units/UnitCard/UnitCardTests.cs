using HairClinic.Domain.HairSystems;
using HairClinic.Web.Fence;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.UnitCard;

namespace HairClinic.Web.Tests.Features.Units.UnitCard;

public sealed class UnitCardTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_unit_tells_what_it_is_whose_where_and_everything_that_happened_the_last_first()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.Arrived("U-1", b.Una));
        await book.TakeAsync(unit, UnitStepKind.Inspected, i => i.SetAllAsOrdered());

        var card = (await OpenAsync(book, unit, book.AtDesk))!;

        Assert.Equal(("Everyday", "Silk top", "Workshop North", "Elm Row"), (card.Kind, card.Base, card.Workshop, card.PlaceName));
        Assert.Equal(("Una Test", "for U-1"), (card.Owner!.Name, card.Order!.Number));
        Assert.Equal([UnitStepKind.Accepted, UnitStepKind.Arrived, UnitStepKind.Ordered], card.Steps.Select(s => s.Step.Kind));
        Assert.All(card.Steps, s => Assert.Equal("Desk", s.By));
        Assert.Equal((UnitStepKind.Accepted, UnitStepKind.Prepared), (card.Last!.Step.Kind, card.Next[0]));
    }

    [Fact]
    public async Task Bonds_and_loans_of_it_stand_with_whose_head_it_was()
    {
        HairSystem worn = null!,
            stock = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                (worn, stock) = (b.InHouse("U-1", b.Una), b.InHouse("N-1", null));
                b.Scene.AddBond(b.Una, worn, Today.PlusDays(-9), b.Adhesive);
            }
        );
        await book.TakeAsync(stock, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Ben.Id, Today.PlusDays(9)));

        var card = (await OpenAsync(book, worn, book.AtDesk))!;
        var lent = (await OpenAsync(book, stock, book.AtDesk))!;

        Assert.Equal((Today.PlusDays(-9), "Una Test"), (card.Bonds.Single().AppliedOn, card.Bonds.Single().On.Name));
        Assert.Empty(card.Next);
        Assert.Equal(("Ben Test", Today.PlusDays(9)), (lent.Loans.Single().To.Name, lent.Loans.Single().Loan.DueBackOn));
        Assert.Equal(UnitStepKind.BackFromLoan, lent.Next[0]);
    }

    [Fact]
    public async Task A_trainee_sees_their_clients_unit_without_price_and_writes_nothing_and_others_do_not_find_it()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                unit = b.InHouse("U-1", b.Una);
                b.GiveToTrainee(b.Una);
            }
        );

        var card = (await OpenAsync(book, unit, book.AsTrainee))!;

        Assert.Equal((false, false, 0), (card.SeesMoney, card.MayWrite, card.Next.Count));
        Assert.Null(await OpenAsync(book, unit, book.AsElsewhere));
    }

    private static Task<Slice.Screen?> OpenAsync(UnitBook book, HairSystem unit, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(unit.Id, Cancel));
}
