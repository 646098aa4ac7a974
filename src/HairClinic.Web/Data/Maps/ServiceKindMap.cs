namespace HairClinic.Web.Data.Maps;

public sealed class ServiceKindMap() : FencedMap<ServiceKind>("service_kinds")
{
    protected override void Map(EntityTypeBuilder<ServiceKind> builder)
    {
        builder.Ignore(x => x.Minutes);
        builder.HasIndex(x => new { x.PracticeId, x.Name }).IsUnique();
        builder.AddChildren(x => x.Steps, (ServiceStep s) => s.ServiceKindId);
    }
}
