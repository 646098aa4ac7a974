using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Data.Maps;

public sealed class DraftMap() : FencedMap<Draft>("drafts")
{
    public const string OneEach = "ix_drafts_practice_id_person_id_form_subject_id";

    protected override void Map(EntityTypeBuilder<Draft> builder)
    {
        builder.Property(x => x.Body).HasColumnType("jsonb");
        builder.AddReference<Draft, Person>(x => x.PersonId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.PersonId,
                x.Form,
                x.SubjectId,
            })
            .IsUnique();
    }
}
