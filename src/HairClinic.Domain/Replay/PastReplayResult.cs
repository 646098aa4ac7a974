namespace HairClinic.Domain.Replay;

/// <summary>How well the program would have said a practice's past: numbers only, of the whole practice.</summary>
/// <param name="Day">The last day whose records it knew.</param>
/// <param name="From">The first bond's day.</param>
public sealed record PastReplayResult(LocalDate Day, LocalDate From)
{
    /// <summary>A practice's past changes slowly.</summary>
    public const int EveryDays = 7;

    /// <summary>How often it learnt anew; 0 where too little had ended to look at all.</summary>
    public int Refits { get; init; }

    public int MonthsBetween { get; init; }

    /// <summary>One client in so many was looked at.</summary>
    public int OneIn { get; init; } = 1;

    public BandShare Bonds { get; init; } = new();

    public BandShare Units { get; init; } = new();

    /// <summary>Chances of a gap beside how often one came, of orders on their days.</summary>
    public IReadOnlyList<ChanceBin> Chances { get; init; } = [];

    /// <summary>Orders of which it cannot be said yet, or that would have come to nothing.</summary>
    public int OrdersLeftOut { get; init; }

    /// <summary>Units that ended: fewer than <see cref="BandShare.FewestToTell"/> tell nothing of gaps either.</summary>
    public int EndedUnits { get; init; }

    /// <summary>The first day that was lived again; null where none was.</summary>
    public LocalDate? ReplayedFrom { get; init; }

    /// <summary>Null where there is too little to tell.</summary>
    public ReplayedGaps? Gaps { get; init; }

    public bool IsDueAgain(LocalDate today) => today >= Day.PlusDays(EveryDays);
}
