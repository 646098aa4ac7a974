using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Orders;

/// <summary>Days on which a workshop makes nothing. Both ends are included.</summary>
public sealed class WorkshopClosure : PracticeOwned
{
    private WorkshopClosure() { }

    internal WorkshopClosure(Guid id, Guid workshopId, LocalDate from, LocalDate to, string reason)
    {
        if (to < from)
            throw new Refusal("The closure ends before it starts.");
        Id = id;
        WorkshopId = workshopId;
        From = from;
        To = to;
        Reason = reason;
    }

    public Guid WorkshopId { get; private set; }

    public LocalDate From { get; private set; }

    public LocalDate To { get; private set; }

    public string Reason { get; private set; } = "";
}
