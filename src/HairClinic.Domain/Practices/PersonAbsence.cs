namespace HairClinic.Domain.Practices;

/// <summary>Days on which a person does not work.</summary>
public sealed class PersonAbsence : DaysOff
{
    private PersonAbsence() { }

    internal PersonAbsence(Guid id, Guid personId, LocalDate from, LocalDate to, string reason)
        : base(id, from, to, reason, "The absence ends before it starts.") => PersonId = personId;

    public Guid PersonId { get; private set; }
}
