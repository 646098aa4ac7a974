using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace HairClinic.Web.Data.Maps;

public sealed class ErasureMap() : FencedMap<Erasure>("erasures")
{
    public const string OncePerClient = "ux_erasures_client";

    protected override void Map(EntityTypeBuilder<Erasure> builder)
    {
        builder.AddReference<Erasure, Client>(x => x.ClientId);
        builder
            .Property(x => x.Counts)
            .HasColumnType("jsonb")
            .HasConversion(
                counts => JsonSerializer.Serialize(counts, JsonColumns.Options),
                json => JsonSerializer.Deserialize<Dictionary<string, int>>(json, JsonColumns.Options)!,
                new ValueComparer<Dictionary<string, int>>((a, b) => a!.SequenceEqual(b!), c => c.Count, c => new(c))
            );
        builder.HasIndex(x => new { x.PracticeId, x.ClientId }).IsUnique().HasDatabaseName(OncePerClient);
    }
}
