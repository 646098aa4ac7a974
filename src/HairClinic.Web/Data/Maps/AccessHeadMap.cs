using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class AccessHeadMap() : FencedMap<AccessHead>("access_heads")
{
    protected override void Map(EntityTypeBuilder<AccessHead> builder) => builder.HasIndex(x => x.PracticeId).IsUnique();
}
