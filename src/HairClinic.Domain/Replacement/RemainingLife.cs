namespace HairClinic.Domain.Replacement;

/// <summary>A bondable unit in house: its remaining life.</summary>
/// <param name="Centre">m + xᵀβ of ln T.</param>
/// <param name="Loading">How much of the client's δ + b it takes on.</param>
/// <param name="Tau">eˢ·σ.</param>
/// <param name="WornDays">Worn until today.</param>
public readonly record struct RemainingLife(double Centre, double Loading, double Tau, int WornDays);
