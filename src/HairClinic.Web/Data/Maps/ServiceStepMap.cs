namespace HairClinic.Web.Data.Maps;

public sealed class ServiceStepMap() : FencedMap<ServiceStep>("service_steps")
{
    protected override void Map(EntityTypeBuilder<ServiceStep> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_service_steps_minutes", "minutes between 5 and 480"));
        builder.HasIndex(x => new { x.PracticeId, x.ServiceKindId });
    }
}
