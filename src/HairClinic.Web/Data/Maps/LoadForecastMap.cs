namespace HairClinic.Web.Data.Maps;

public sealed class LoadForecastMap() : FencedMap<LoadForecast>("load_forecasts")
{
    protected override void Map(EntityTypeBuilder<LoadForecast> builder)
    {
        builder.Property(x => x.Scenarios).HasJsonConversion();
        builder.AddReference<LoadForecast, Salon>(x => x.SalonId);
        builder.HasIndex(x => new { x.PracticeId, x.SalonId }).IsUnique();
    }
}
