namespace HairClinic.Web.Data.Maps;

public sealed class ClearanceMap() : FencedMap<Clearance>("clearances")
{
    protected override void Map(EntityTypeBuilder<Clearance> builder)
    {
        builder.AddReference<Clearance, Client>(x => x.ClientId);
        builder.AddReference<Clearance, Product>(x => x.ProductId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
    }
}
