namespace HairClinic.Domain.Replacement;

/// <summary>Always so many ready: beside the unit that is worn, as many are in house or under way.</summary>
/// <remarks>
/// The chance of a gap keeps its promise only while lives and leads are what the records say. A spare keeps it too when a workshop gets
/// worse, a batch is bad or an order is forgotten, because it asks nothing of any record.
/// </remarks>
public static class SpareRule
{
    /// <summary>The units to order at once.</summary>
    /// <param name="spares">To be kept ready; 0 where the chance of a gap alone decides.</param>
    /// <param name="inHouse">The client's own units that wear well, the one on the head included; what is lent to them is not theirs.</param>
    /// <param name="inFlight">On order.</param>
    public static int Missing(int spares, int inHouse, int inFlight) => spares <= 0 ? 0 : Math.Max(0, 1 + spares - inHouse - inFlight);
}
