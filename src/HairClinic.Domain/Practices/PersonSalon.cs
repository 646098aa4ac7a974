namespace HairClinic.Domain.Practices;

/// <summary>A person works in a salon.</summary>
public sealed class PersonSalon : PracticeOwned
{
    private PersonSalon() { }

    internal PersonSalon(Guid id, Guid personId, Guid salonId)
    {
        Id = id;
        PersonId = personId;
        SalonId = salonId;
    }

    public Guid PersonId { get; private set; }

    public Guid SalonId { get; private set; }
}
