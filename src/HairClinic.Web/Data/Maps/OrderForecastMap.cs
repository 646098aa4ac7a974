namespace HairClinic.Web.Data.Maps;

public sealed class OrderForecastMap() : FencedMap<OrderForecast>("order_forecasts")
{
    protected override void Map(EntityTypeBuilder<OrderForecast> builder)
    {
        builder.Property(x => x.Scenarios).HasJsonConversion();
        builder.AddReference<OrderForecast, Workshop>(x => x.WorkshopId);
        builder.HasIndex(x => new { x.PracticeId, x.WorkshopId }).IsUnique().AreNullsDistinct(false);
    }
}
