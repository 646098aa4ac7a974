using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.TakeStep;

namespace HairClinic.Web.Tests.Features.Units.TakeStep;

/// <summary>Who writes a step, where, and who is told that somebody was quicker.</summary>
public sealed class WhoTakesStepTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Another_salons_manager_does_not_find_it_and_a_trainee_does_not_write()
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

        Assert.Null(await OpenAsync(book, unit, book.AsElsewhere));
        await book.RefusedAsync(
            "You cannot open this unit: it belongs to another salon. Ask somebody there.",
            () => book.TakeAsync(unit, UnitStepKind.Prepared, by: book.AsElsewhere)
        );
        Assert.NotNull(await OpenAsync(book, unit, book.AsTrainee));
        await book.RefusedAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () => book.TakeAsync(unit, UnitStepKind.Prepared, by: book.AsTrainee)
        );
    }

    [Fact]
    public async Task Accepted_in_one_salon_it_is_moved_to_the_other_and_lies_there()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.Arrived("U-1", b.Una));

        await book.TakeAsync(unit, UnitStepKind.Inspected, i => i.SetAllAsOrdered());
        await book.RefusedAsync(
            "Say in which salon it is.",
            () => book.TakeAsync(unit, UnitStepKind.Moved, i => i.SalonId = book.Quayside.Id)
        );
        await book.TakeAsync(unit, UnitStepKind.Moved, i => (i.SalonId, i.Spot) = (book.Quayside.Id, "safe"), book.AsOwner);

        Assert.Equal((book.Quayside.Id, "safe"), ((await book.UnitAsync(unit)).PlaceSalonId, (await book.UnitAsync(unit)).Spot));
        var screen = await OpenAsync(book, unit, book.AsOwner);
        Assert.Equal(book.Quayside.Id, screen!.Start.SalonId);
    }

    [Fact]
    public async Task A_double_tap_is_one_step()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));
        var key = Guid.CreateVersion7();

        await book.TakeAsync(unit.Id, UnitStepKind.Prepared, key: key);
        await book.TakeAsync(unit.Id, UnitStepKind.Prepared, key: key);

        Assert.Single((await book.UnitAsync(unit)).Steps);
    }

    [Theory]
    [InlineData(UnitStepKind.Arrived)]
    [InlineData(UnitStepKind.Lent)]
    public async Task Of_two_at_the_same_moment_one_writes_and_the_other_is_told(UnitStepKind step)
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                if (step == UnitStepKind.Lent)
                    unit = b.InHouse("N-1", null);
                else
                    b.Order("7", Today.PlusDays(-30), unit = b.Draft("U-1", b.Una));
            }
        );
        Task Take(PersonActor by) => book.TakeAsync(unit, step, i => (i.ClientId, i.DueBackOn) = (book.Una.Id, Today.PlusDays(9)), by);

        var came = await UnitBook.BothAsync(() => Take(book.AtDesk), () => Take(book.AsManager));

        Assert.Single(came, e => e is null);
        Assert.Single(came, e => e is Refusal or OvertakenException);
        Assert.Single((await book.UnitAsync(unit)).Steps, s => s.Kind == step);
        Assert.Equal("1", await book.AskAsync("select (select count(*) from unit_arrivals) + (select count(*) from unit_loans)"));
    }

    [Fact]
    public async Task The_form_says_when_a_step_cannot_come_next()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));

        Assert.True((await OpenAsync(book, unit, book.AtDesk))!.MayTake);
        await book.TakeAsync(unit, UnitStepKind.Prepared);
        Assert.False((await OpenAsync(book, unit, book.AtDesk))!.MayTake);
    }

    private static Task<Slice.Screen?> OpenAsync(UnitBook book, HairSystem unit, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(unit.Id, UnitStepKind.Prepared, null, Cancel));
}
