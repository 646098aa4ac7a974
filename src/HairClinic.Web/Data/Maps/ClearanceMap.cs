namespace HairClinic.Web.Data.Maps;

public sealed class ClearanceMap() : FencedMap<Clearance>("clearances")
{
    protected override void Map(EntityTypeBuilder<Clearance> builder)
    {
        builder.Refers<Clearance, Client>(x => x.ClientId);
        builder.Refers<Clearance, Product>(x => x.ProductId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
    }
}
