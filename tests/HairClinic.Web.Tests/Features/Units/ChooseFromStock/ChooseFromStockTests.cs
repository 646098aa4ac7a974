using HairClinic.Domain.HairSystems;
using HairClinic.Web.Fence;
using Slice = HairClinic.Web.Features.Units.ChooseFromStock;

namespace HairClinic.Web.Tests.Features.Units.ChooseFromStock;

public sealed class ChooseFromStockTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nobodys_units_of_ones_own_salons_are_offered_and_what_is_not_clean_says_so()
    {
        HairSystem dirty = null!,
            lent = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.InHouse("N-clean", null);
                (dirty, lent) = (b.InHouse("N-dirty", null), b.InHouse("N-lent", null));
                b.InHouse("N-there", null, b.Quayside);
                b.InHouse("U-1", b.Ben);
                b.Draft("N-draft", null);
            }
        );
        await book.TakeAsync(dirty, UnitStepKind.SetForCleaning);
        await book.TakeAsync(lent, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Ben.Id, UnitBook.Today.PlusDays(9)));

        var screen = (await OpenAsync(book, book.AtDesk))!;

        Assert.Equal("Una Test", screen.Name);
        Assert.Equal([("N-clean", true), ("N-dirty", false)], screen.Stock.Select(u => (u.Serial, u.Clean)));
        Assert.Equal(["N-clean", "N-dirty", "N-there"], (await OpenAsync(book, book.AsOwner))!.Stock.Select(u => u.Serial));
        Assert.Null(await OpenAsync(book, book.AsElsewhere));
    }

    private static Task<Slice.Screen?> OpenAsync(UnitBook book, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(book.Una.Id, Cancel));
}
