namespace HairClinic.Domain.HairSystems;

/// <summary>Where a unit stands between specified and retired.</summary>
public enum UnitState
{
    Specified,
    Ordered,
    Acknowledged,
    Shipped,
    Arrived,
    Inspected,
    Remake,
    Accepted,
    Prepared,
    Bonded,
    Resting,
    Retired,
    Lost,
    Damaged,
    ReturnedToClient,
    EmergencySpare,
}
