namespace HairClinic.Domain.Visits;

/// <summary>Which of a client's visits take the client's time, so that nobody is booked in two places at once.</summary>
/// <remarks>
/// A visit takes its client from its first minute to its last while it is booked, waited for in the salon or under way. It gives
/// them back when it is called off, when they did not come, and when it is done: who was finished early may sit down elsewhere.
/// Two live visits at once are refused (<c>ex_visits_client</c>), save where nobody chose it: visits that a merge brings together
/// are all kept, and those that came stand aside until the other is out of the way.
/// </remarks>
public static class ClientTime
{
    public static bool IsLive(this VisitState state) => state is VisitState.Booked or VisitState.Arrived or VisitState.InChair;

    /// <summary>Whether two visits share a moment; ends are not included.</summary>
    public static bool Meets(this Visit one, Visit other) => one.StartsAt < other.EndsAt && other.StartsAt < one.EndsAt;

    /// <summary>Lets those of the visits that come to a client stand aside which meet one that takes the client already.</summary>
    /// <param name="own">The client's visits.</param>
    /// <param name="coming">Visits that become the client's.</param>
    /// <returns>Each that stands aside now, with the one it meets.</returns>
    public static IReadOnlyList<(Visit Holds, Visit Aside)> Settle(IEnumerable<Visit> own, IEnumerable<Visit> coming)
    {
        var holding = own.Where(v => v.HoldsClient).ToList();
        var aside = new List<(Visit, Visit)>();
        foreach (var visit in coming.Where(v => v.HoldsClient).OrderBy(v => v.StartsAt))
        {
            if (holding.Find(visit.Meets) is not { } first)
                continue;
            visit.StandAside();
            aside.Add((first, visit));
        }
        return aside;
    }
}
