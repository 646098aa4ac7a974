namespace HairClinic.Domain.Clients;

/// <summary>Whether a person of the practice may confirm an address.</summary>
public enum AddressConfirmerEligibility
{
    /// <summary>They may not read what clients confide, so they cannot open it to anybody either.</summary>
    NotTheirRole,

    /// <summary>They only have access through a grant: the client's home salon looks after the addresses that open their pages.</summary>
    NotAtHome,

    /// <summary>They entered it: somebody else has to look.</summary>
    EnteredByThem,

    /// <summary>They entered it and nobody else here could confirm it: an owner may, after signing in again.</summary>
    OnlyProvedAnew,

    Free,
}

/// <summary>Who may confirm an address. The database holds the same (<c>guard_opening_address</c>).</summary>
/// <remarks>
/// Somebody who types an address into a record could type their own, so a second person who may open the record anyway has to confirm it.
/// Where a practice has only one such person, it is the owner, who must sign in again and is logged.
/// </remarks>
public static class AddressConfirmationRights
{
    /// <param name="atHome">Whether they work in the client's home salon, or are an owner.</param>
    /// <param name="enteredBy">Null where no person entered it: a job did.</param>
    /// <param name="othersMay">Whether somebody else who works here could confirm it.</param>
    public static AddressConfirmerEligibility For(StaffRole role, bool atHome, Guid person, Guid? enteredBy, bool othersMay) =>
        role is not (StaffRole.Owner or StaffRole.Manager or StaffRole.Stylist) ? AddressConfirmerEligibility.NotTheirRole
        : !atHome ? AddressConfirmerEligibility.NotAtHome
        : enteredBy != person ? AddressConfirmerEligibility.Free
        : role == StaffRole.Owner && !othersMay ? AddressConfirmerEligibility.OnlyProvedAnew
        : AddressConfirmerEligibility.EnteredByThem;
}
