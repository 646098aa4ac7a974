using HairClinic.Web.Keys;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

public sealed class MasterKeyMarkMap : IEntityTypeConfiguration<MasterKeyMark>
{
    public void Configure(EntityTypeBuilder<MasterKeyMark> builder) => builder.ToTable("master_key_marks");
}
