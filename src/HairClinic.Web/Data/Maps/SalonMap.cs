namespace HairClinic.Web.Data.Maps;

public sealed class SalonMap() : FencedMap<Salon>("salons")
{
    protected override void Map(EntityTypeBuilder<Salon> builder)
    {
        builder.HasIndex(x => new { x.PracticeId, x.Name }).IsUnique();
        builder.Ignore(x => x.TimeZone);
        builder.AddChildren(x => x.Hours, (SalonHours h) => h.SalonId);
        builder.AddChildren(x => x.Closures, (SalonClosure c) => c.SalonId);
    }
}
