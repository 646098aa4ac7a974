using HairClinic.Domain.Shelf;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.Products;

namespace HairClinic.Web.Tests.Features.Settings.Products;

public sealed class ProductsTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Open_lots_and_the_first_to_expire_are_shown_and_finished_ones_are_not_counted()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            var product = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "A-1");
            product.ReceiveLot(Guid.CreateVersion7(), "A-2", new LocalDate(2027, 9, 30));
            product.ReceiveLot(Guid.CreateVersion7(), "A-0", new LocalDate(2027, 1, 31)).Finish();
        });

        var row = Assert.Single((await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel))).Rows);

        Assert.Equal(("Adhesive A", 2, new LocalDate(2027, 9, 30)), (row.Name, row.OpenLots, row.NextExpiry!.Value));
    }
}
