using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Data.Maps;

public sealed class WorkItemMap() : FencedMap<WorkItem>("work_items")
{
    protected override void Map(EntityTypeBuilder<WorkItem> builder)
    {
        builder.Property(x => x.Body).HasColumnType("jsonb");
        builder.HasIndex(x => new { x.PracticeId, x.NotBefore }).HasFilter("done_at is null");
    }
}
