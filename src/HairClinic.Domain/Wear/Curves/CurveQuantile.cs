namespace HairClinic.Domain.Wear.Curves;

/// <summary>The time by which a share had ended, with its 95 % limits; null where the curve does not come down that far.</summary>
public readonly record struct CurveQuantile(double Probability, double? Time, double? Lower, double? Upper);
