using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Data.Maps;

public sealed class WriteKeyMap() : FencedMap<WriteKey>("write_keys")
{
    protected override void Map(EntityTypeBuilder<WriteKey> builder)
    {
        builder.Property(x => x.WriteName).HasColumnName("deed");
        builder.Property(x => x.Answer).HasColumnType("jsonb");
        builder.HasIndex(x => new { x.PracticeId, x.At });
    }
}
