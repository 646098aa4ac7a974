namespace HairClinic.Web.Data.Maps;

public sealed class SalonClosureMap() : FencedMap<SalonClosure>("salon_closures")
{
    protected override void Map(EntityTypeBuilder<SalonClosure> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_salon_closures_ends_after_start", "\"to\" >= \"from\""));
        builder.HasIndex(x => new { x.PracticeId, x.SalonId });
    }
}
