namespace HairClinic.Web.Data.Maps;

public sealed class PersonSalonMap() : FencedMap<PersonSalon>("person_salons")
{
    protected override void Map(EntityTypeBuilder<PersonSalon> builder)
    {
        builder.AddReference<PersonSalon, Salon>(x => x.SalonId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.PersonId,
                x.SalonId,
            })
            .IsUnique();
    }
}
