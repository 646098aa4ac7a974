namespace HairClinic.Domain.Practices;

/// <summary>One spell in which a salon is open, every week, in its own zone.</summary>
public sealed class SalonHours : PracticeOwned
{
    private SalonHours() { }

    internal SalonHours(Guid id, Guid salonId, IsoDayOfWeek day, LocalTime opens, LocalTime closes)
    {
        Id = id;
        SalonId = salonId;
        Day = day;
        Opens = opens;
        Closes = closes;
    }

    public Guid SalonId { get; private set; }

    public IsoDayOfWeek Day { get; private set; }

    public LocalTime Opens { get; private set; }

    public LocalTime Closes { get; private set; }
}
