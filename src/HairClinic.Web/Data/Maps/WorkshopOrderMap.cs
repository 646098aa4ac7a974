namespace HairClinic.Web.Data.Maps;

public sealed class WorkshopOrderMap() : FencedMap<WorkshopOrder>("workshop_orders")
{
    public const string OneNumber = "ix_workshop_orders_practice_id_number";

    protected override void Map(EntityTypeBuilder<WorkshopOrder> builder)
    {
        builder.AddReference<WorkshopOrder, Workshop>(x => x.WorkshopId);
        builder.AddReference<WorkshopOrder, Salon>(x => x.SalonId);
        builder.HasIndex(x => new { x.PracticeId, x.Number }).IsUnique().HasDatabaseName(OneNumber);
        builder.AddChildren(x => x.Promises, (OrderPromise p) => p.WorkshopOrderId);
    }
}
