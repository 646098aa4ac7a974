namespace HairClinic.Web.Data.Maps;

public sealed class WorkshopMap() : FencedMap<Workshop>("workshops")
{
    protected override void Map(EntityTypeBuilder<Workshop> builder)
    {
        builder.HasIndex(x => new { x.PracticeId, x.Name }).IsUnique();
        builder.AddChildren(x => x.Closures, (WorkshopClosure c) => c.WorkshopId);
    }
}
