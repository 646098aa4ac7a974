namespace HairClinic.Web.Data.Maps;

public sealed class ConsentTextMap() : FencedMap<ConsentText>("consent_texts")
{
    public const string NumberOnce = "ux_consent_texts_number";

    protected override void Map(EntityTypeBuilder<ConsentText> builder)
    {
        builder.AddReference<ConsentText, Person>(x => x.By);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.Subject,
                x.Language,
                x.Number,
            })
            .IsUnique()
            .HasDatabaseName(NumberOnce);
    }
}
