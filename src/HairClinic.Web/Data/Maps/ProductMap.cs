namespace HairClinic.Web.Data.Maps;

public sealed class ProductMap() : FencedMap<Product>("products")
{
    protected override void Map(EntityTypeBuilder<Product> builder)
    {
        builder.HasIndex(x => new { x.PracticeId, x.Name }).IsUnique();
        builder.AddChildren(x => x.Lots, (ProductLot l) => l.ProductId);
    }
}
