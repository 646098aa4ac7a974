namespace HairClinic.Web.Data.Maps;

public sealed class BaseMaterialMap() : FencedMap<BaseMaterial>("base_materials")
{
    protected override void Map(EntityTypeBuilder<BaseMaterial> builder)
    {
        builder.HasIndex(x => new { x.PracticeId, x.Name }).IsUnique();
        builder.ToTable(t => t.HasCheckConstraint("ck_base_materials_life", "life_to_days > life_from_days"));
    }
}
