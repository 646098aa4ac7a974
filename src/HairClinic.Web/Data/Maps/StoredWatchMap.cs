using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Web.Data.Maps;

public sealed class StoredWatchMap() : FencedMap<StoredWatch>("stored_watches")
{
    protected override void Map(EntityTypeBuilder<StoredWatch> builder)
    {
        builder.Ignore(x => x.Statistic);
        builder.Ignore(x => x.Stream);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.Kind,
                x.StreamId,
            })
            .IsUnique();
    }
}
