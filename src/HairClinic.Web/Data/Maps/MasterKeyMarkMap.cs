using HairClinic.Web.Keys;

namespace HairClinic.Web.Data.Maps;

public sealed class MasterKeyMarkMap : IEntityTypeConfiguration<MasterKeyMark>
{
    public void Configure(EntityTypeBuilder<MasterKeyMark> builder) => builder.ToTable("master_key_marks");
}
