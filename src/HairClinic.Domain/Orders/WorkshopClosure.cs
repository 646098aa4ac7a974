namespace HairClinic.Domain.Orders;

/// <summary>Days on which a workshop makes nothing.</summary>
public sealed class WorkshopClosure : DaysOff
{
    private WorkshopClosure() { }

    internal WorkshopClosure(Guid id, Guid workshopId, LocalDate from, LocalDate to, string reason)
        : base(id, from, to, reason, "The closure ends before it starts.") => WorkshopId = workshopId;

    public Guid WorkshopId { get; private set; }
}
