namespace HairClinic.Domain.LoadAhead;

/// <summary>How many visits of a kind one client makes in a stretch of days.</summary>
public readonly record struct VisitCount(double Mean, double Variance)
{
    /// <summary>At most one visit, with this chance.</summary>
    public static VisitCount AtMostOne(double chance) => new(chance, chance * (1 - Math.Min(1, chance)));
}
