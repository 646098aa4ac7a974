namespace HairClinic.Web.Data.Maps;

public sealed class PromiseRevisionMap() : FencedMap<PromiseRevision>("promise_revisions")
{
    protected override void Map(EntityTypeBuilder<PromiseRevision> builder)
    {
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.HairSystemId,
                x.Number,
            })
            .IsUnique();
    }
}
