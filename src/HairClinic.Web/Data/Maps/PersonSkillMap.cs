namespace HairClinic.Web.Data.Maps;

public sealed class PersonSkillMap() : FencedMap<PersonSkill>("person_skills")
{
    protected override void Map(EntityTypeBuilder<PersonSkill> builder)
    {
        builder.AddReference<PersonSkill, ServiceKind>(x => x.ServiceKindId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.PersonId,
                x.ServiceKindId,
            })
            .IsUnique();
    }
}
