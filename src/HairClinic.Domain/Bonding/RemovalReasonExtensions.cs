namespace HairClinic.Domain.Bonding;

/// <summary>The questions asked of why a bond ended.</summary>
public static class RemovalReasonExtensions
{
    /// <summary>
    /// It came off at home: it let go, as a lift does, and ended its hold, whether the unit was found or lost. Nobody saw it come
    /// off in a salon, so its day is asked, and lies between the last sound day and the report where it is not known.
    /// </summary>
    public static bool CameOffByItself(this RemovalReason reason) => reason is RemovalReason.BroughtIn or RemovalReason.LostAtHome;

    /// <summary>Only an edge that came up, or a unit that came off, tells how long the bond held.</summary>
    public static bool EndedHold(this RemovalReason reason) => reason is RemovalReason.Lifted || reason.CameOffByItself();

    /// <summary>It tells of the client's health: only who may read that reads it.</summary>
    public static bool IsConfidential(this RemovalReason reason) =>
        reason is RemovalReason.Reaction or RemovalReason.Skin or RemovalReason.Operation or RemovalReason.Treatment;

    /// <summary>A bond may follow at the same visit; after the others the head stays as it is.</summary>
    public static bool AllowsNewBond(this RemovalReason reason) =>
        reason
            is not (
                RemovalReason.Skin
                or RemovalReason.Operation
                or RemovalReason.Treatment
                or RemovalReason.Rest
                or RemovalReason.Leaving
                or RemovalReason.NotSeenAgain
                or RemovalReason.TakenBack
            );

    /// <summary>A take-down may end there; one that was only due, and nothing else, is followed by a new bond.</summary>
    public static bool EndsWithTakeDown(this RemovalReason reason) =>
        reason is not (RemovalReason.Scheduled or RemovalReason.NotSeenAgain or RemovalReason.TakenBack);
}
