namespace HairClinic.Web.Data.Books;

/// <summary>Reports a lift, by the client or at the desk: the same hold data either way.</summary>
public static class LiftReporter
{
    /// <param name="bond">As found; null when it is not there.</param>
    /// <param name="liftedOn">Null when the day is not known: then it lies between the last day it was known sound and today.</param>
    /// <param name="since">Or about when.</param>
    /// <exception cref="Refusal">It is off already, a lift is noted already, or the day cannot be.</exception>
    public static Lift Report(Bond? bond, string zone, Instant now, LocalDate? liftedOn, SinceWhen? since, LiftZone? where, bool spotFixed)
    {
        if (bond is not { IsOpen: true })
            throw new Refusal("This bond was taken off in the meantime. Open the client again.");
        if (bond.Lift is { } noted)
            throw new Refusal("A lift of this bond was noted on {0} already; only the first ends the hold.", noted.ReportedOn);
        var lift = Lift.Tell(now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date, liftedOn, since, where, spotFixed);
        bond.ReportLift(lift);
        return lift;
    }
}
