namespace HairClinic.Web.Data.Maps;

public sealed class ClientRequestMap() : FencedMap<ClientRequest>("client_requests")
{
    protected override void Map(EntityTypeBuilder<ClientRequest> builder)
    {
        builder.HasOne<Client>().WithMany().HasForeignKey(x => new { x.PracticeId, x.ClientId }).OnDelete(DeleteBehavior.Cascade);
        builder.AddReference<ClientRequest, Salon>(x => x.SalonId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
    }
}
