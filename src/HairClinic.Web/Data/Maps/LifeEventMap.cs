namespace HairClinic.Web.Data.Maps;

public sealed class LifeEventMap() : FencedMap<LifeEvent>("life_events")
{
    protected override void Map(EntityTypeBuilder<LifeEvent> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_life_events_ends_after_start", "\"to\" >= \"from\""));
        builder.Ignore(x => x.PausesBonding);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
    }
}
