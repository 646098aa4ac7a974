namespace HairClinic.Web.Data.Maps;

public sealed class StoredPreparationMap() : FencedMap<StoredPreparation>("stored_preparations")
{
    protected override void Map(EntityTypeBuilder<StoredPreparation> builder) => builder.HasIndex(x => x.PracticeId).IsUnique();
}
