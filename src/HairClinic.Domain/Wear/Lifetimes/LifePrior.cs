namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A normal prior.</summary>
public readonly record struct LifePrior(double Mean, double Spread)
{
    public static readonly LifePrior Flat = new(0, double.PositiveInfinity);

    public bool IsProper => double.IsFinite(Spread);

    /// <summary>1 / variance; 0 for a flat prior.</summary>
    public double Precision => IsProper ? 1 / (Spread * Spread) : 0;

    /// <summary>A practice's factor row for a covariate: it multiplies the expected time by this much.</summary>
    public static LifePrior OfFactor(double factor) => new(Math.Log(factor), 0.35);
}
