namespace HairClinic.Web.Data.Maps;

public sealed class VisitSegmentMap() : FencedMap<VisitSegment>("visit_segments")
{
    public const string ChairOnce = "ex_visit_segments_chair";
    public const string HandsOnce = "ex_visit_segments_hands";

    protected override void Map(EntityTypeBuilder<VisitSegment> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_visit_segments_ends_after_start", "ends_at > starts_at"));
        builder.AddReference<VisitSegment, Chair>(x => x.ChairId);
        builder.AddReference<VisitSegment, Person>(x => x.PersonId);
        builder.HasIndex(x => new { x.PracticeId, x.VisitId });
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.PersonId,
            x.StartsAt,
        });
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ChairId,
            x.StartsAt,
        });
    }
}
