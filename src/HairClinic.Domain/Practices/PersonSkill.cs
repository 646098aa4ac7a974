namespace HairClinic.Domain.Practices;

/// <summary>A person may do a service.</summary>
public sealed class PersonSkill : PracticeOwned
{
    private PersonSkill() { }

    internal PersonSkill(Guid id, Guid personId, Guid serviceKindId)
    {
        Id = id;
        PersonId = personId;
        ServiceKindId = serviceKindId;
    }

    public Guid PersonId { get; private set; }

    public Guid ServiceKindId { get; private set; }
}
