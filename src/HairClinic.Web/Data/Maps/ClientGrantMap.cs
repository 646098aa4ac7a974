namespace HairClinic.Web.Data.Maps;

public sealed class ClientGrantMap() : FencedMap<ClientGrant>("client_grants")
{
    protected override void Map(EntityTypeBuilder<ClientGrant> builder)
    {
        builder.ToTable(t =>
        {
            t.HasCheckConstraint("ck_client_grants_ends_after_start", "ends_at is null or ends_at >= starts_at");
            t.HasCheckConstraint("ck_client_grants_one_reader", "(salon_id is null) <> (person_id is null)");
        });
        builder.HasOne<Client>().WithMany().HasForeignKey(x => new { x.PracticeId, x.ClientId }).OnDelete(DeleteBehavior.Cascade);
        builder.AddReference<ClientGrant, Salon>(x => x.SalonId);
        builder.AddReference<ClientGrant, Person>(x => x.PersonId);
        // Row security asks this of every row that belongs to a client.
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.HasIndex(x => new { x.PracticeId, x.SalonId });
    }
}
