namespace HairClinic.Web.Data.Maps;

public sealed class TakeDownProductMap() : FencedMap<TakeDownProduct>("take_down_products")
{
    protected override void Map(EntityTypeBuilder<TakeDownProduct> builder)
    {
        builder.AddReference<TakeDownProduct, Product>(x => x.ProductId);
        builder.AddReference<TakeDownProduct, ProductLot>(x => x.LotId);
        builder.HasIndex(x => new { x.PracticeId, x.VisitRecordId });
        builder.HasIndex(x => new { x.PracticeId, x.LotId });
    }
}
