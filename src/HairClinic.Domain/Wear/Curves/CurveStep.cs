namespace HairClinic.Domain.Wear.Curves;

/// <summary>One step down of a survival curve, at a time on which something ended.</summary>
/// <param name="AtRisk">Weight of what was going on just before.</param>
/// <param name="Events">Weight of what ended.</param>
/// <param name="Survival">The share that goes on after this time.</param>
/// <param name="StdError">Greenwood's, of the survival; not a number where nothing goes on.</param>
/// <param name="Lower">95 % limit by the log(−log) transformation; not a number where nothing goes on.</param>
/// <param name="Upper">As <paramref name="Lower"/>.</param>
public readonly record struct CurveStep(
    double Time,
    double AtRisk,
    double Events,
    double Survival,
    double StdError,
    double Lower,
    double Upper
);
