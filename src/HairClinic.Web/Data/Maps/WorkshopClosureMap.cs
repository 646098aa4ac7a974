namespace HairClinic.Web.Data.Maps;

public sealed class WorkshopClosureMap() : FencedMap<WorkshopClosure>("workshop_closures")
{
    protected override void Map(EntityTypeBuilder<WorkshopClosure> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_workshop_closures_ends_after_start", "\"to\" >= \"from\""));
        builder.HasIndex(x => new { x.PracticeId, x.WorkshopId });
    }
}
