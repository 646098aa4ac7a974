using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class TabletMap() : FencedMap<Tablet>("tablets")
{
    protected override void Map(EntityTypeBuilder<Tablet> builder) => builder.HasIndex(x => new { x.PracticeId, x.TokenHash }).IsUnique();
}
