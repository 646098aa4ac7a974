using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.CorrectBondDays;

namespace HairClinic.Web.Tests.Features.Units.CorrectBondDays;

public sealed class CorrectBondDaysTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private HairSystem _unit = null!;
    private Bond _bond = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_days_of_an_old_books_bond_are_corrected_and_the_unit_was_first_worn_then()
    {
        await using var book = await OpenAsync();
        var input = (await LookAsync(book, book.AsManager))!.Start!;
        Assert.Equal((Today.PlusDays(-400), (LocalDate?)Today.PlusDays(-20)), (input.BondedOn!.Value, input.CameOffOn));
        input.BondedOn = Today.PlusDays(-52);

        await SaveAsync(book, input, book.AsManager);

        var stored = await book.Clinic.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == _bond.Id, Cancel));
        Assert.Equal((Today.PlusDays(-52), (LocalDate?)Today.PlusDays(-20)), (stored.AppliedOn, stored.RemovedOn));
        Assert.Equal((LocalDate?)Today.PlusDays(-52), (await book.UnitAsync(_unit)).Dates.FirstBondedOn);
    }

    [Fact]
    public async Task Not_over_another_bond_nor_from_another_salon_nor_over_what_somebody_else_wrote()
    {
        await using var book = await OpenAsync();
        var input = (await LookAsync(book, book.AsManager))!.Start!;

        await book.RefusedAsync(
            "Another bond of this client or unit begins on {0}: they would be on at once.",
            () => SaveAsync(book, Copy(input, Today.PlusDays(-52), Today.PlusDays(-5)), book.AsManager)
        );
        Assert.Null(await LookAsync(book, book.AsElsewhere));
        await book.RefusedAsync(
            "This bond is not there any more. Open the unit again.",
            () => SaveAsync(book, Copy(input, Today.PlusDays(-52), Today.PlusDays(-20)), book.AsElsewhere)
        );
        await SaveAsync(book, Copy(input, Today.PlusDays(-52), Today.PlusDays(-20)), book.AsManager);
        await Assert.ThrowsAsync<OvertakenException>(() =>
            SaveAsync(book, Copy(input, Today.PlusDays(-53), Today.PlusDays(-20)), book.AsManager)
        );
    }

    private async Task<UnitBook> OpenAsync() =>
        await UnitBook.OpenAsync(
            server,
            b =>
            {
                _unit = new HairSystem(Guid.CreateVersion7(), "O-1", b.Una.Id, b.Kind.Id, null);
                _unit.ImportState(UnitState.Resting, new UnitDates { FirstBondedOn = Today.PlusDays(-400) }, null);
                b.Scene.Db.HairSystems.Add(_unit);
                _bond = Made(b, _unit, Today.PlusDays(-400), Today.PlusDays(-20));
                b.Scene.AddBond(b.Una, b.InHouse("U-1", b.Una), Today.PlusDays(-10), b.Adhesive);
            }
        );

    private static Bond Made(UnitBook book, HairSystem unit, LocalDate on, LocalDate off)
    {
        var bond = new Bond(Guid.CreateVersion7(), unit.Id, book.Una.Id, on, null, Attachment.Liquid, appliedBy: null);
        bond.SetDueWindow(book.Scene.DueCalculatorFor(book.Una, unit, book.Adhesive).WindowFor(on));
        bond.Remove(off, RemovalReason.Scheduled);
        book.Scene.Db.Bonds.Add(bond);
        return bond;
    }

    private static Slice.Input Copy(Slice.Input input, LocalDate on, LocalDate off) =>
        new()
        {
            BondId = input.BondId,
            Version = input.Version,
            BondedOn = on,
            CameOffOn = off,
        };

    private Task<Slice.Screen?> LookAsync(UnitBook book, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(_unit.Id, _bond.Id, Cancel));

    private static Task<Slice.Outcome> SaveAsync(UnitBook book, Slice.Input input, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Outcome>(by, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
