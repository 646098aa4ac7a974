namespace HairClinic.Web.Data.Maps;

public sealed class PersonMap() : FencedMap<Person>("people")
{
    protected override void Map(EntityTypeBuilder<Person> builder)
    {
        builder.Ignore(x => x.TakesClients);
        builder.Contains(x => x.Salons, (PersonSalon s) => s.PersonId);
        builder.Contains(x => x.Skills, (PersonSkill s) => s.PersonId);
        builder.Contains(x => x.WorkSpells, (WorkSpell s) => s.PersonId);
        builder.Contains(x => x.Absences, (PersonAbsence a) => a.PersonId);
    }
}
