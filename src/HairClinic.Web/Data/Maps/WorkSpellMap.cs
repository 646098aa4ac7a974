namespace HairClinic.Web.Data.Maps;

public sealed class WorkSpellMap() : FencedMap<WorkSpell>("work_spells")
{
    protected override void Map(EntityTypeBuilder<WorkSpell> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_work_spells_ends_after_start", "\"to\" > \"from\""));
        builder.AddReference<WorkSpell, Salon>(x => x.SalonId);
        builder.HasIndex(x => new { x.PracticeId, x.PersonId });
    }
}
