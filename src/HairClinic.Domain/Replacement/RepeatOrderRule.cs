using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Replacement;

/// <summary>Which unit the next order repeats.</summary>
public static class RepeatOrderRule
{
    /// <summary>
    /// The newest that was made for the client. A ready-made one tides over and says nothing of what they are to have next, unless
    /// they never had another. Drafts, and what was called off, are not repeated. Common practice, no source.
    /// </summary>
    /// <param name="units">The oldest first.</param>
    /// <returns>Null where there is none.</returns>
    public static HairSystem? UnitToRepeat(IEnumerable<HairSystem> units)
    {
        var had = units.Where(u => u.State is not (UnitState.Specified or UnitState.Cancelled)).ToList();
        return had.LastOrDefault(u => u.Origin != UnitOrigin.ReadyMade) ?? had.LastOrDefault();
    }
}
