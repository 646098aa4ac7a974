namespace HairClinic.Web.Data.Maps;

public sealed class ClientPreferenceMap() : FencedMap<ClientPreference>("client_preferences")
{
    protected override void Map(EntityTypeBuilder<ClientPreference> builder)
    {
        builder.AddReference<ClientPreference, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId }).IsUnique();
    }
}
