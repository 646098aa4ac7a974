using HairClinic.Domain.Clients;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

public sealed class ClientEventMap() : FencedMap<ClientEvent>("client_events")
{
    protected override void Map(EntityTypeBuilder<ClientEvent> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_client_events_ends_after_start", "\"to\" >= \"from\""));
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
    }
}
