namespace HairClinic.Web.Data.Maps;

public sealed class LoadForecastMap() : FencedMap<LoadForecast>("load_forecasts")
{
    protected override void Map(EntityTypeBuilder<LoadForecast> builder)
    {
        builder.Property(x => x.Scenarios).IsJson();
        builder.Refers<LoadForecast, Salon>(x => x.SalonId);
        builder.HasIndex(x => new { x.PracticeId, x.SalonId }).IsUnique();
    }
}
