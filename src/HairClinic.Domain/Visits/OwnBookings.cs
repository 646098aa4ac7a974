namespace HairClinic.Domain.Visits;

/// <summary>How far clients may book by themselves.</summary>
public static class OwnBookings
{
    /// <summary>So many visits ahead may a client have who books without a word to the desk. The database counts them.</summary>
    public const int MostAhead = 3;

    /// <summary>Whether a client may still move or call off a visit themselves: so many hours before at the latest, and not once they are there.</summary>
    public static bool MayChange(VisitState state, Instant startsAt, int hoursBefore, Instant now) =>
        state == VisitState.Booked && startsAt - now >= Duration.FromHours(hoursBefore);
}
