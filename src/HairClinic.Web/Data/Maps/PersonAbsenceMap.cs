namespace HairClinic.Web.Data.Maps;

public sealed class PersonAbsenceMap() : FencedMap<PersonAbsence>("person_absences")
{
    protected override void Map(EntityTypeBuilder<PersonAbsence> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_person_absences_ends_after_start", "\"to\" >= \"from\""));
        builder.HasIndex(x => new { x.PracticeId, x.PersonId });
    }
}
