namespace HairClinic.Domain.Practices;

/// <summary>Days on which a salon is shut although its weekly hours say open.</summary>
public sealed class SalonClosure : DaysOff
{
    private SalonClosure() { }

    internal SalonClosure(Guid id, Guid salonId, LocalDate from, LocalDate to, string reason)
        : base(id, from, to, reason, "The closure ends before it starts.") => SalonId = salonId;

    public Guid SalonId { get; private set; }
}
