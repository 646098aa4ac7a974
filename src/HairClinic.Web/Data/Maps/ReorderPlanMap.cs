namespace HairClinic.Web.Data.Maps;

public sealed class ReorderPlanMap() : FencedMap<ReorderPlan>("reorder_plans")
{
    protected override void Map(EntityTypeBuilder<ReorderPlan> builder)
    {
        builder.AddReference<ReorderPlan, Client>(x => x.ClientId);
        builder.AddReference<ReorderPlan, UnitKind>(x => x.UnitKindId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId }).IsUnique();
        // Who endangers the promise, worst first.
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.ExpectedDaysWithoutHair,
                x.ClientId,
            })
            .HasFilter("at_risk")
            .HasDatabaseName("ix_reorder_plans_at_risk");
    }
}
