namespace HairClinic.Web.Fence;

/// <summary>Who may change whom: owners everybody; managers themselves and staff below them, and never a role.</summary>
public static class StaffPermissions
{
    public static bool MayManagePerson(PersonActor actor, Guid personId, StaffRole role) =>
        actor.StaffRole == StaffRole.Owner
        || actor.StaffRole == StaffRole.Manager && (personId == actor.PersonId || role is not (StaffRole.Owner or StaffRole.Manager));

    /// <summary>The roles a form may give to someone who has (or would begin with) a role.</summary>
    public static IReadOnlyList<StaffRole> AssignableRoles(PersonActor actor, StaffRole role, bool isNew) =>
        actor.StaffRole == StaffRole.Owner ? Enum.GetValues<StaffRole>()
        : isNew ? [StaffRole.FrontDesk, StaffRole.Stylist, StaffRole.Trainee]
        : [role];

    /// <summary>
    /// Whether a client of that home salon is theirs to move, fold, erase and let others see; owners are at home everywhere. Whoever was
    /// let in may read and serve them, and no more.
    /// </summary>
    public static bool MayManageClient(PersonActor actor, Guid homeSalonId) =>
        actor.StaffRole == StaffRole.Owner || actor.StaffRole != StaffRole.Trainee && actor.Salons.Contains(homeSalonId);

    /// <summary>Who books visits for the clients they reach: whoever is asked for the next one, at the desk or at the chair.</summary>
    public static bool MayBook(StaffRole role) => role != StaffRole.Trainee;

    /// <summary>Who sees prices: everybody but trainees.</summary>
    public static bool MaySeeMoney(StaffRole role) => role != StaffRole.Trainee;

    /// <summary>Who hears what a client tells of their health.</summary>
    public static bool MayReadHealth(PersonActor actor) => actor.StaffRole is StaffRole.Owner or StaffRole.Manager or StaffRole.Stylist;
}
