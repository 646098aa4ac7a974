using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.LoadAhead;

/// <summary>What one client's visits ahead depend on. Days are counted from today.</summary>
/// <remarks>Each hold is taken as the prediction of a single one: that a client's later holds resemble each other is left out of the band.</remarks>
/// <param name="Hold">The client's predictive hold when what all share lies so many standard deviations off.</param>
/// <param name="TargetDays">The target after snapping of a fresh bond, at least 1 and less than the weeks looked at.</param>
public sealed record LoadQuestion(Func<LoadScenario, LifePrediction> Hold, int TargetDays)
{
    /// <summary>Days the bond on the head has held; null where there is none.</summary>
    public int? BondAgeDays { get; init; }

    /// <summary>That bond's target, days after it was made.</summary>
    public int CurrentTargetDays { get; init; }

    /// <summary>The day of the first bond, where none is on the head and one is planned.</summary>
    public int? FirstBondInDays { get; init; }

    public int? WashEveryDays { get; init; }

    public int NextWashInDays { get; init; }

    public int? FittingInDays { get; init; }
}
