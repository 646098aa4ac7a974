namespace HairClinic.Web.Data.Maps;

public sealed class ChairMap() : FencedMap<Chair>("chairs")
{
    protected override void Map(EntityTypeBuilder<Chair> builder)
    {
        builder.AddReference<Chair, Salon>(x => x.SalonId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.SalonId,
                x.Name,
            })
            .IsUnique();
    }
}
