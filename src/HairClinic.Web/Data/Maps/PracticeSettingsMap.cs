namespace HairClinic.Web.Data.Maps;

public sealed class PracticeSettingsMap() : FencedMap<PracticeSettings>("practice_settings")
{
    protected override void Map(EntityTypeBuilder<PracticeSettings> builder)
    {
        builder.HasIndex(x => x.PracticeId).IsUnique();
    }
}
