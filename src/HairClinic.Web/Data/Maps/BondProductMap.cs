namespace HairClinic.Web.Data.Maps;

public sealed class BondProductMap() : FencedMap<BondProduct>("bond_products")
{
    protected override void Map(EntityTypeBuilder<BondProduct> builder)
    {
        builder.HasReference<BondProduct, Product>(x => x.ProductId);
        builder.HasReference<BondProduct, ProductLot>(x => x.LotId);
        builder.HasIndex(x => new { x.PracticeId, x.BondId });
        builder.HasIndex(x => new { x.PracticeId, x.LotId });
    }
}
