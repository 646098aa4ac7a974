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

    /// <summary>Each part of a value is a column of its own, called as the part is.</summary>
    protected static void ColumnsOf<TValue>(ComplexPropertyBuilder<TValue> value, string prefix = "")
        where TValue : notnull
    {
        foreach (var part in typeof(TValue).GetProperties().Where(p => p.CanWrite))
            value.Property(part.PropertyType, part.Name).HasColumnName(prefix + JsonNamingPolicy.SnakeCaseLower.ConvertName(part.Name));
    }
}
