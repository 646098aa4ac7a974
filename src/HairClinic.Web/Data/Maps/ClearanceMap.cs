namespace HairClinic.Web.Data.Maps;

public sealed class ClearanceMap() : FencedMap<Clearance>("clearances")
{
    protected override void Map(EntityTypeBuilder<Clearance> builder)
    {
        builder.HasReference<Clearance, Client>(x => x.ClientId);
        builder.HasReference<Clearance, Product>(x => x.ProductId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
    }
}
