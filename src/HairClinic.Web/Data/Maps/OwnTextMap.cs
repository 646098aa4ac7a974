namespace HairClinic.Web.Data.Maps;

public sealed class OwnTextMap() : FencedMap<OwnText>("own_texts")
{
    protected override void Map(EntityTypeBuilder<OwnText> builder)
    {
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.Topic,
                x.Language,
            })
            .IsUnique();
    }
}
