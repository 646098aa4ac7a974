namespace HairClinic.Domain.Replacement;

/// <summary>Whether the next unit was there when one was worn out.</summary>
public static class TimelySuccessors
{
    /// <returns>
    /// Of the client's units that left service worn out in the period, how many there are, and for how many another, not worn
    /// out itself, was ready in house by that day. Whoever left by then needed none.
    /// </returns>
    public static (int InTime, int Units) Count(HairHistory client, LocalDate from, LocalDate through)
    {
        var worn = client
            .Units.Where(u => u.WornOutOn >= from && u.WornOutOn <= through && !(client.LeftOn <= u.WornOutOn))
            .OrderBy(u => u.WornOutOn)
            .ToList();
        return (worn.Count(unit => client.Units.Any(other => Follows(other, unit))), worn.Count);
    }

    private static bool Follows(UnitHistory other, UnitHistory unit) =>
        !ReferenceEquals(other, unit)
        && other.ReadyOn <= unit.WornOutOn
        && !(other.GoneOn <= unit.WornOutOn)
        && !(other.WornOutOn <= unit.WornOutOn);
}
