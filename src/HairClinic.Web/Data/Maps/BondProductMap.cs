namespace HairClinic.Web.Data.Maps;

public sealed class BondProductMap() : FencedMap<BondProduct>("bond_products")
{
    protected override void Map(EntityTypeBuilder<BondProduct> builder)
    {
        builder.AddReference<BondProduct, Product>(x => x.ProductId);
        builder.AddReference<BondProduct, ProductLot>(x => x.LotId);
        builder.HasIndex(x => new { x.PracticeId, x.BondId });
        builder.HasIndex(x => new { x.PracticeId, x.LotId });
    }
}
