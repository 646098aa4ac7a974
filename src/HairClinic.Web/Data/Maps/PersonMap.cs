namespace HairClinic.Web.Data.Maps;

public sealed class PersonMap() : FencedMap<Person>("people")
{
    protected override void Map(EntityTypeBuilder<Person> builder)
    {
        builder.Ignore(x => x.TakesClients);
        builder.HasParts(x => x.Salons, (PersonSalon s) => s.PersonId);
        builder.HasParts(x => x.Skills, (PersonSkill s) => s.PersonId);
        builder.HasParts(x => x.WorkSpells, (WorkSpell s) => s.PersonId);
        builder.HasParts(x => x.Absences, (PersonAbsence a) => a.PersonId);
    }
}
