namespace HairClinic.Web.Data.Maps;

public sealed class UnitKindMap() : FencedMap<UnitKind>("unit_kinds")
{
    protected override void Map(EntityTypeBuilder<UnitKind> builder)
    {
        builder.AddReference<UnitKind, BaseMaterial>(x => x.BaseMaterialId);
        builder.AddReference<UnitKind, Workshop>(x => x.WorkshopId);
        builder.HasIndex(x => new { x.PracticeId, x.Name }).IsUnique();
    }
}
