using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.Shelf;

namespace HairClinic.Web.Tests.Features.Units.Shelf;

public sealed class ShelfTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_here_lies_in_the_group_of_what_it_waits_for_and_what_is_on_a_head_does_not_lie_here()
    {
        HairSystem dirty = null!,
            drying = null!,
            ready = null!,
            home = null!,
            spare = null!,
            away = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.Arrived("U-inspect", b.Una);
                b.InHouse("U-prepare", b.Una);
                b.InHouse("N-stock", null);
                b.InHouse("N-there", null, b.Quayside);
                (dirty, drying, ready) = (b.InHouse("U-dirty", b.Una), b.InHouse("U-drying", b.Una), b.InHouse("U-ready", b.Una));
                (home, spare, away) = (b.InHouse("U-home", b.Una), b.InHouse("U-spare", b.Una), b.InHouse("U-away", b.Una));
                b.Scene.AddBond(b.Ben, b.InHouse("U-worn", b.Ben), Today.PlusDays(-9), b.Adhesive);
            }
        );
        await book.TakeAsync(dirty, UnitStepKind.SetForCleaning);
        await book.TakeAsync(drying, UnitStepKind.LeftToDry);
        await book.TakeAsync(ready, UnitStepKind.Prepared);
        await book.TakeAsync(ready, UnitStepKind.Moved, i => i.Spot = "drawer 3");
        await book.TakeAsync(home, UnitStepKind.Prepared);
        await book.TakeAsync(home, UnitStepKind.Moved, i => i.WithClient = true);
        await book.TakeAsync(spare, UnitStepKind.KeptAsSpare, i => i.Note = "thin");
        await book.TakeAsync(away, UnitStepKind.SentForRepair, i => i.Repair = RepairKind.Rim);

        var screen = await OpenAsync(book, book.AtDesk);

        Assert.Equal(
            [
                (ShelfGroup.ToInspect, "U-inspect"),
                (ShelfGroup.ToBeCleaned, "U-dirty"),
                (ShelfGroup.Drying, "U-drying"),
                (ShelfGroup.ToPrepare, "U-prepare"),
                (ShelfGroup.Ready, "U-ready"),
                (ShelfGroup.Stock, "N-stock"),
                (ShelfGroup.Emergency, "U-spare"),
                (ShelfGroup.WithClients, "U-home"),
                (ShelfGroup.Away, "U-away"),
            ],
            screen.Groups.Select(g => (g.Kind, string.Join(' ', g.Rows.Select(r => r.Serial))))
        );
        Assert.Equal("drawer 3", screen.Groups.Single(g => g.Kind == ShelfGroup.Ready).Rows[0].Spot);
        Assert.Equal(UnitStepKind.Cleaned, screen.Groups.Single(g => g.Kind == ShelfGroup.ToBeCleaned).Rows[0].Next);
    }

    [Fact]
    public async Task What_is_lent_stands_with_whom_and_until_when_the_soonest_first_and_not_among_the_rest()
    {
        HairSystem one = null!,
            other = null!;
        await using var book = await UnitBook.OpenAsync(server, b => (one, other) = (b.InHouse("N-1", null), b.InHouse("N-2", null)));
        await book.TakeAsync(one, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Una.Id, Today.PlusDays(9)));
        await book.TakeAsync(other, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Ben.Id, Today.PlusDays(2)));

        var screen = await OpenAsync(book, book.AtDesk);

        Assert.Equal(
            [("N-2", "Ben Test", Today.PlusDays(2)), ("N-1", "Una Test", Today.PlusDays(9))],
            screen.Loans.Select(l => (l.Serial, l.To.Name, l.DueBackOn))
        );
        Assert.Empty(screen.Groups);
        await book.TakeAsync(one, UnitStepKind.BackFromLoan);
        Assert.Equal(
            (1, ShelfGroup.ToBeCleaned),
            ((await OpenAsync(book, book.AtDesk)).Loans.Count, (await OpenAsync(book, book.AtDesk)).Groups[0].Kind)
        );
    }

    [Fact]
    public async Task Each_salon_has_its_own_and_another_salon_is_shown_to_who_works_there_alone()
    {
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.InHouse("N-here", null);
                b.InHouse("N-there", null, b.Quayside);
            }
        );

        var asked = await OpenAsync(book, book.AsOwner, book.Quayside.Id);
        var refused = await OpenAsync(book, book.AtDesk, book.Quayside.Id);

        Assert.Equal(("Quayside", "N-there"), (asked.Salon, asked.Groups.Single().Rows.Single().Serial));
        Assert.Equal(("Elm Row", "N-here"), (refused.Salon, refused.Groups.Single().Rows.Single().Serial));
    }

    private static Task<Slice.Screen> OpenAsync(UnitBook book, PersonActor by, Guid? salonId = null) =>
        book.Clinic.UseAsync<Slice, Slice.Screen>(by, s => s.OpenAsync(salonId, Cancel));
}
