namespace HairClinic.Web.Data.Maps;

public sealed class PersonMap() : FencedMap<Person>("people")
{
    protected override void Map(EntityTypeBuilder<Person> builder)
    {
        builder.Ignore(x => x.TakesClients);
        builder.AddChildren(x => x.Salons, (PersonSalon s) => s.PersonId);
        builder.AddChildren(x => x.Skills, (PersonSkill s) => s.PersonId);
        builder.AddChildren(x => x.WorkSpells, (WorkSpell s) => s.PersonId);
        builder.AddChildren(x => x.Absences, (PersonAbsence a) => a.PersonId);
    }
}
