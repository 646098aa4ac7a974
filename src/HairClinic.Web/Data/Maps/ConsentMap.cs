namespace HairClinic.Web.Data.Maps;

public sealed class ConsentMap() : FencedMap<Consent>("consents")
{
    protected override void Map(EntityTypeBuilder<Consent> builder)
    {
        builder.AddReference<Consent, Client>(x => x.ClientId);
        builder.AddReference<Consent, ConsentText>(x => x.TextId);
        builder.AddReference<Consent, Person>(x => x.TakenBy);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.At,
        });
    }
}
