namespace HairClinic.Domain.HairSystems;

/// <summary>The questions asked of a unit's state.</summary>
public static class UnitStateExtensions
{
    /// <summary>In house, sound, and not on a head: may be bonded today.</summary>
    public static bool IsBondable(this UnitState state) =>
        state is UnitState.Accepted or UnitState.Prepared or UnitState.Resting or UnitState.EmergencySpare;

    /// <summary>Hair that is on a head or in house. A unit that has just arrived counts, though it is still to be inspected; an emergency spare does not.</summary>
    public static bool IsOnHeadOrInHouse(this UnitState state) =>
        state is UnitState.Bonded or UnitState.Arrived or UnitState.Inspected || state.IsBondable() && state != UnitState.EmergencySpare;

    /// <summary>Ordered and not yet here.</summary>
    public static bool IsInFlight(this UnitState state) =>
        state is UnitState.Ordered or UnitState.Acknowledged or UnitState.Shipped or UnitState.Remake;

    /// <summary>Will not be worn again.</summary>
    public static bool IsGone(this UnitState state) =>
        state
            is UnitState.Retired
                or UnitState.Lost
                or UnitState.Damaged
                or UnitState.ReturnedToClient
                or UnitState.Refused
                or UnitState.Cancelled;
}
