namespace HairClinic.Domain.Visits;

/// <summary>How far clients may book by themselves.</summary>
public static class OwnBookings
{
    /// <summary>So many visits ahead may a client have who books without a word to the desk. The database counts them.</summary>
    public const int MostAhead = 3;
}
