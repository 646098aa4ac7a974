namespace HairClinic.Web.Features.Lasting;

/// <summary>The spells of one adhesive, base, workshop … and what they say.</summary>
/// <param name="Id">Null for those of which nobody wrote it down.</param>
public sealed record LastingGroup(Guid? Id, string? Name, int Spells, int Ended, GroupCurve Curve, IReadOnlyList<int> AtRisk)
{
    /// <summary>With fewer ends than this, nothing is said for certain.</summary>
    public const int FewestEnded = 10;

    /// <summary>Still going on, or over for another reason: known to have lasted at least so long.</summary>
    public int Censored => Spells - Ended;

    public bool CanTell => Ended >= FewestEnded && Curve.Median is not null;

    /// <param name="days">The days at which it is told how many were still watched.</param>
    public static LastingGroup FromSpells(Guid? id, string? name, IReadOnlyCollection<Spell> spells, IReadOnlyList<double> days) =>
        new(
            id,
            name,
            spells.Count,
            spells.Count(s => s.End != SpellEnd.After),
            GroupCurve.Estimate(spells),
            [.. days.Select(day => spells.Count(s => s.Lower >= day))]
        );

    /// <summary>From 0 in a few even steps to the longest that was watched.</summary>
    public static IReadOnlyList<double> RiskTableDaysUpTo(double last)
    {
        double[] steps = [1, 2, 5, 7, 14, 28, 56, 91, 182, 364, 728];
        var step = steps.FirstOrDefault(s => last / s <= 8, steps[^1]);
        return [.. Enumerable.Range(0, (int)(last / step) + 1).Select(i => i * step)];
    }
}
