namespace HairClinic.Domain.Wear.Grades;

/// <summary>When to say of a unit in wear that it wears faster than its age: look at the spare.</summary>
/// <remarks>
/// It is said on top of what the age alone says, so only where the grades move the outlook: the chance that hair is gone before the next
/// unit is ready is four times what the practice accepts and at least twice what it was, and the unit itself is expected to last less than
/// three quarters of what its age says. An order placed on its last day has the accepted chance already, so merely passing that would
/// warn of every tenth sound unit. The numbers are common practice, no source: in a simulated practice where a seventh of the units last
/// less than half as long, they name a quarter of those that end too soon and a fortieth of the units that do not.
/// </remarks>
public static class FastWearRule
{
    private const double Accepted = 4;
    private const double Rise = 2;
    private const double Shorter = 0.75;

    /// <summary>Below this chance of a gap nothing is said, whatever the age says.</summary>
    public static bool MayWarn(double gapChance, double alpha) => gapChance >= Accepted * alpha;

    /// <param name="byAge">Without the grades.</param>
    /// <param name="byGrades">With them.</param>
    /// <param name="alpha">The chance of a gap that is accepted.</param>
    public static bool Warns(WearOutlook byAge, WearOutlook byGrades, double alpha) =>
        byGrades.MedianDays < Shorter * byAge.MedianDays
        && MayWarn(byGrades.GapChance, alpha)
        && byGrades.GapChance >= Rise * byAge.GapChance;
}

/// <summary>What is expected of a unit in wear.</summary>
/// <param name="GapChance">That hair in house is worn out before the next unit, in flight or ordered today, is ready.</param>
/// <param name="MedianDays">The unit's own remaining life.</param>
public readonly record struct WearOutlook(double GapChance, double MedianDays);
