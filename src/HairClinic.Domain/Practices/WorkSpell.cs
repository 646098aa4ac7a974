namespace HairClinic.Domain.Practices;

/// <summary>Weekly hours a person works in one salon, in that salon's zone.</summary>
public sealed class WorkSpell : PracticeOwned
{
    private WorkSpell() { }

    internal WorkSpell(Guid id, Guid personId, Guid salonId, IsoDayOfWeek day, LocalTime from, LocalTime to)
    {
        if (to <= from)
            throw new Refusal("Working hours must end after they start.");
        Id = id;
        PersonId = personId;
        SalonId = salonId;
        Day = day;
        From = from;
        To = to;
    }

    public Guid PersonId { get; private set; }

    public Guid SalonId { get; private set; }

    public IsoDayOfWeek Day { get; private set; }

    public LocalTime From { get; private set; }

    public LocalTime To { get; private set; }
}
