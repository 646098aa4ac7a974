namespace HairClinic.Web.Data.Maps;

public sealed class ConsentMap() : FencedMap<Consent>("consents")
{
    protected override void Map(EntityTypeBuilder<Consent> builder)
    {
        builder.Refers<Consent, Client>(x => x.ClientId);
        builder.Refers<Consent, ConsentText>(x => x.TextId);
        builder.Refers<Consent, Person>(x => x.TakenBy);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.At,
        });
    }
}
