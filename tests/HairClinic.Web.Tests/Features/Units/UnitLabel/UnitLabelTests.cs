using HairClinic.Domain.HairSystems;
using HairClinic.Web.Fence;
using Slice = HairClinic.Web.Features.Units.UnitLabel;

namespace HairClinic.Web.Tests.Features.Units.UnitLabel;

public sealed class UnitLabelTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_label_carries_serial_kind_and_code_and_no_name()
    {
        HairSystem unit = null!,
            stock = null!;
        await using var book = await UnitBook.OpenAsync(server, b => (unit, stock) = (b.InHouse("U-1", b.Una), b.InHouse("N-1", null)));

        Assert.Equal(new Slice.Screen("U-1", "Everyday", "c-1"), await OpenAsync(book, unit, book.AtDesk));
        Assert.Equal(new Slice.Screen("N-1", "Everyday", null), await OpenAsync(book, stock, book.AtDesk));
        Assert.Null(await OpenAsync(book, unit, book.AsElsewhere));
        Assert.DoesNotContain(typeof(Slice.Screen).GetProperties(), p => p.Name.Contains("Name", StringComparison.Ordinal));
    }

    private static Task<Slice.Screen?> OpenAsync(UnitBook book, HairSystem unit, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(unit.Id, Cancel));
}
