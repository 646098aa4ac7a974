using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class LinkAskMap : IEntityTypeConfiguration<LinkAsk>
{
    public void Configure(EntityTypeBuilder<LinkAsk> builder)
    {
        builder.ToTable("link_asks");
        builder.HasKey(x => x.Id);
        builder.Property(x => x.Id).ValueGeneratedNever();
        builder.HasIndex(x => new { x.AddressHash, x.At });
        builder.HasIndex(x => x.At);
    }
}
