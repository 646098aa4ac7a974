namespace HairClinic.Web.Data.Maps;

public sealed class UnitRepairMap() : FencedMap<UnitRepair>("unit_repairs")
{
    protected override void Map(EntityTypeBuilder<UnitRepair> builder) => builder.HasIndex(x => new { x.PracticeId, x.HairSystemId });
}
