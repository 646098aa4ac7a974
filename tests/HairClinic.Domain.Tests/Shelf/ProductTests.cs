using HairClinic.Domain.Shelf;
using NodaTime;

namespace HairClinic.Domain.Tests.Shelf;

public sealed class ProductTests
{
    [Theory]
    [InlineData(null, null)]
    [InlineData("", null)]
    [InlineData(" ", null)]
    [InlineData(" acrylic ", "acrylic")]
    public void What_is_blank_is_nothing(string? typed, string? kept)
    {
        var product = new Product(Guid.CreateVersion7(), " Adhesive A ", ProductKind.Adhesive);

        product.Edit(" Adhesive B ", ProductKind.Tape, typed, 36);

        Assert.Equal(("Adhesive B", ProductKind.Tape, kept, 36), (product.Name, product.Kind, product.Chemistry, product.LabelCureHours));
    }

    [Fact]
    public void A_lot_takes_another_code_and_another_last_day_and_a_product_retires()
    {
        var product = new Product(Guid.CreateVersion7(), "Adhesive A", ProductKind.Adhesive);
        var lot = product.ReceiveLot(Guid.CreateVersion7(), " A-1 ", expiresOn: null);
        Assert.Equal(("A-1", product.Id, false), (lot.Code, lot.ProductId, product.Retired));

        lot.Edit(" A-2 ", new LocalDate(2027, 2, 2));
        product.Retire();

        Assert.Equal(("A-2", true), (lot.Code, product.Retired));
        Assert.Equal([true, false], new[] { 2, 3 }.Select(d => lot.IsUsableOn(new LocalDate(2027, 2, d))));
    }
}
