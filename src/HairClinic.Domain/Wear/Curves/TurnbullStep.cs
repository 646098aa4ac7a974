namespace HairClinic.Domain.Wear.Curves;

/// <summary>A stretch (from, to] in which ends can lie; both equal for one known time, no upper end where all is open.</summary>
/// <param name="Mass">The share that ended there.</param>
/// <param name="Survival">The share that goes on after it. Inside the stretch the data do not say how it falls.</param>
public readonly record struct TurnbullStep(double From, double To, double Mass, double Survival);
