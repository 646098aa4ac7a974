namespace HairClinic.Domain.Visits;

/// <summary>Which of a client's visits occupy the client, so that nobody is booked in two places at once.</summary>
/// <remarks>
/// A visit takes its client from its first minute to its last while it is booked, waited for in the salon or under way. It gives
/// them back when it is called off, when they did not come, and when it is done: a client who is finished early may sit down elsewhere.
/// Two live visits at once are refused (<c>ex_visits_client</c>), save where nobody chose it: visits that a merge brings together
/// are all kept, and those that came stand aside until the other is out of the way.
/// </remarks>
public static class ClientOccupancyRule
{
    public static bool IsLive(this VisitState state) => state is VisitState.Booked or VisitState.Arrived or VisitState.InChair;

    /// <summary>Whether two visits share a moment; ends are not included.</summary>
    public static bool Overlaps(this Visit one, Visit other) => one.StartsAt < other.EndsAt && other.StartsAt < one.EndsAt;

    /// <summary>Of the visits a client is given by a merge, those that overlap one of their own stand aside.</summary>
    /// <param name="own">The client's visits.</param>
    /// <param name="coming">Visits that become the client's.</param>
    /// <returns>Each that stands aside now, with the one it meets.</returns>
    public static IReadOnlyList<(Visit Holds, Visit Aside)> ReleaseOverlapping(IEnumerable<Visit> own, IEnumerable<Visit> coming)
    {
        var holding = own.Where(v => v.HoldsClient).ToList();
        var aside = new List<(Visit, Visit)>();
        foreach (var visit in coming.Where(v => v.HoldsClient).OrderBy(v => v.StartsAt))
        {
            if (holding.Find(visit.Overlaps) is not { } first)
                continue;
            visit.FreeClientTime();
            aside.Add((first, visit));
        }
        return aside;
    }
}

/// <summary>How far clients may book by themselves.</summary>
public static class SelfBookingRule
{
    /// <summary>A client who books online may have this many visits ahead. The database counts them.</summary>
    public const int MostAhead = 3;

    /// <summary>Whether a client may still move or call off a visit themselves: so many hours before at the latest, and not once they are there.</summary>
    public static bool MayChange(VisitState state, Instant startsAt, int hoursBefore, Instant now) =>
        state == VisitState.Booked && startsAt - now >= Duration.FromHours(hoursBefore);
}
