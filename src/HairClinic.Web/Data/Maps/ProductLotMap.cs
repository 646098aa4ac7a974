namespace HairClinic.Web.Data.Maps;

public sealed class ProductLotMap() : FencedMap<ProductLot>("product_lots")
{
    protected override void Map(EntityTypeBuilder<ProductLot> builder)
    {
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.ProductId,
                x.Code,
            })
            .IsUnique();
    }
}
