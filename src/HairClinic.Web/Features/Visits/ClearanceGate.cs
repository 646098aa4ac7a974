using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>
/// What a clearance does to a booking, a move, a walk-in and a log: a block is refused to whoever may not look at the head, a warning
/// and a block that may be set aside want a second tap. Nobody is told why. For a booking a pause of bonding that has begun is like a
/// block, one that is near like a warning; at the chair <see cref="BondingPause.RequireBondable"/> has the word, and nobody sets it aside.
/// </summary>
internal static class ClearanceGate
{
    private const string Aside = "A block on bonding was looked at and set aside.";

    /// <summary>Who can look at the skin and answer for it.</summary>
    public static bool MaySetAside(PersonActor who) => who.StaffRole is StaffRole.Owner or StaffRole.Stylist;

    /// <summary>For a time that is chosen.</summary>
    /// <exception cref="Refusal">The service is blocked, and it is not for whoever acts to set that aside.</exception>
    public static IReadOnlyList<Doubt> CheckBooking(IReadOnlyCollection<ClearanceSeverity> kinds, BondingPause? pause, PersonActor who) =>
        (kinds.Contains(ClearanceSeverity.Block) || pause is { Degree: BondingPauseDegree.Begun }) && !MaySetAside(who)
            ? throw new Refusal("Ask a stylist first: for now this service is not to be booked for this client.")
        : kinds.Count > 0 || pause is not null ? [Doubt.AskStylistFirst]
        : [];

    /// <summary>For what is logged at the chair.</summary>
    /// <param name="looked">They say that they looked, and it is all right.</param>
    /// <returns>Whether a block was set aside.</returns>
    /// <exception cref="Refusal">It is not for whoever logs this to say that bonding is all right, or they have not said so.</exception>
    public static bool RequireSkinCheck(IReadOnlyCollection<ClearanceSeverity> kinds, PersonActor who, bool looked)
    {
        var blocked = kinds.Contains(ClearanceSeverity.Block);
        if (blocked && !MaySetAside(who))
            throw new Refusal("Bonding is blocked for this client. Ask a stylist to look first.");
        if (blocked && !looked)
            throw new Refusal("Bonding is blocked for this client. Look at the skin first; then say that you looked, or do not bond.");
        if (kinds.Count > 0 && !looked)
            throw new Refusal("Look at the skin first; then say that you looked.");
        return blocked;
    }

    /// <summary>The note as it was typed, without what was added to it.</summary>
    public static string? StripSetAsideLine(string? note) =>
        note == Aside ? null
        : note?.EndsWith('\n' + Aside, StringComparison.Ordinal) == true ? note[..^(Aside.Length + 1)]
        : note;

    public static string AppendSetAsideLine(string? note) => note.WithLine(Aside);
}
