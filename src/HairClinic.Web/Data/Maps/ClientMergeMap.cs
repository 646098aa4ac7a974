using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace HairClinic.Web.Data.Maps;

public sealed class ClientMergeMap() : FencedMap<ClientMerge>("client_merges")
{
    protected override void Map(EntityTypeBuilder<ClientMerge> builder)
    {
        builder.AddReference<ClientMerge, Client>(x => x.KeptId);
        builder.AddReference<ClientMerge, Client>(x => x.FoldedId);
        builder
            .Property(x => x.Moved)
            .HasColumnType("jsonb")
            .HasConversion(
                m => JsonSerializer.Serialize(m, JsonSerializerOptions.Default),
                s => JsonSerializer.Deserialize<Dictionary<string, List<Guid>>>(s, JsonSerializerOptions.Default)!,
                new ValueComparer<Dictionary<string, List<Guid>>>(
                    (a, b) => ReferenceEquals(a, b),
                    m => m.Count,
                    m => m.ToDictionary(p => p.Key, p => p.Value.ToList())
                )
            );
    }
}
