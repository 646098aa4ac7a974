using HairClinic.Web.Keys;

namespace HairClinic.Web.Data.Maps;

public sealed class ClientKeyMap() : FencedMap<ClientKey>("client_keys")
{
    protected override void Map(EntityTypeBuilder<ClientKey> builder)
    {
        builder.AddReference<ClientKey, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId }).IsUnique();
        builder.HasIndex(x => new { x.PracticeId, x.MasterKeyId });
    }
}
