using NodaTime;

namespace HairClinic.Domain.Practices;

/// <summary>Days on which a salon is shut although its weekly hours say open. Both ends are included.</summary>
public sealed class SalonClosure : PracticeOwned
{
    private SalonClosure() { }

    internal SalonClosure(Guid id, Guid salonId, LocalDate from, LocalDate to, string reason)
    {
        if (to < from)
            throw new Refusal("The closure ends before it starts.");
        Id = id;
        SalonId = salonId;
        From = from;
        To = to;
        Reason = reason;
    }

    public Guid SalonId { get; private set; }

    public LocalDate From { get; private set; }

    public LocalDate To { get; private set; }

    public string Reason { get; private set; } = "";
}
