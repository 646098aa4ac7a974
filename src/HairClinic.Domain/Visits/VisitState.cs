namespace HairClinic.Domain.Visits;

public enum VisitState
{
    Booked,
    Arrived,
    InChair,
    Done,
    Cancelled,
    DidNotCome,
}
