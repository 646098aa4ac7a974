using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class PracticeRowMap : IEntityTypeConfiguration<PracticeRow>
{
    public void Configure(EntityTypeBuilder<PracticeRow> builder)
    {
        builder.ToTable("practices");
        builder.HasKey(x => x.Id);
        builder.Property(x => x.Id).ValueGeneratedNever();
    }
}
