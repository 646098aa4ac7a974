using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

/// <summary>What every fenced table shares: the practice in its key, and the row version.</summary>
public abstract class FencedMap<T>(string table) : IEntityTypeConfiguration<T>
    where T : PracticeOwned
{
    public void Configure(EntityTypeBuilder<T> builder)
    {
        builder.ToTable(table);
        builder.HasKey(x => new { x.PracticeId, x.Id });
        builder.Property(x => x.PracticeId).ValueGeneratedNever();
        builder.Property(x => x.Id).ValueGeneratedNever();
        builder.Property(x => x.Version).IsRowVersion();
        Map(builder);
    }

    protected abstract void Map(EntityTypeBuilder<T> builder);
}
