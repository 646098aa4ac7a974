using NodaTime;

namespace HairClinic.Domain.Practices;

/// <summary>Days on which a person does not work. Both ends are included.</summary>
public sealed class PersonAbsence : PracticeOwned
{
    private PersonAbsence() { }

    internal PersonAbsence(Guid id, Guid personId, LocalDate from, LocalDate to, string reason)
    {
        if (to < from)
            throw new Refusal("The absence ends before it starts.");
        Id = id;
        PersonId = personId;
        From = from;
        To = to;
        Reason = reason;
    }

    public Guid PersonId { get; private set; }

    public LocalDate From { get; private set; }

    public LocalDate To { get; private set; }

    public string Reason { get; private set; } = "";
}
