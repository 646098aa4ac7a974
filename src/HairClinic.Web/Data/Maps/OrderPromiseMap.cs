namespace HairClinic.Web.Data.Maps;

public sealed class OrderPromiseMap() : FencedMap<OrderPromise>("order_promises")
{
    protected override void Map(EntityTypeBuilder<OrderPromise> builder)
    {
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.WorkshopOrderId,
                x.Number,
            })
            .IsUnique();
    }
}
