namespace HairClinic.Web.Data.Maps;

public sealed class SalonHoursMap() : FencedMap<SalonHours>("salon_hours")
{
    protected override void Map(EntityTypeBuilder<SalonHours> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_salon_hours_closes_after_opens", "closes > opens"));
        builder.HasIndex(x => new { x.PracticeId, x.SalonId });
    }
}
