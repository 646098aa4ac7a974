namespace HairClinic.Domain.Replacement;

/// <summary>A bondable unit in house: its remaining life.</summary>
/// <param name="Centre">m + xᵀβ of ln T.</param>
/// <param name="Loading">How much of the client's δ + b it takes on.</param>
/// <param name="Tau">eˢ·σ.</param>
/// <param name="WornDays">Worn until today.</param>
public readonly record struct RemainingLife(double Centre, double Loading, double Tau, int WornDays)
{
    // Narrow enough to act as a fixed number of days, wide enough for the daily grid.
    private const double Narrow = 0.02;

    /// <summary>Hair for a fixed number of days, as a repair buys it or a loan gives it.</summary>
    /// <param name="days">1 or more.</param>
    public static RemainingLife OfDays(int days) => new(Math.Log(days), 0, Narrow, 0);
}
