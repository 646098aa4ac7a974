namespace HairClinic.Domain.Replacement;

/// <summary>A Weibull life that has lasted so long already.</summary>
/// <param name="Shape">1/σ.</param>
/// <param name="ScaleDays">The characteristic life.</param>
/// <param name="AgeDays">Worn days until today.</param>
public readonly record struct SmoothLife(double Shape, double ScaleDays, double AgeDays)
{
    /// <summary>The chance that it is worn out within that many further worn days.</summary>
    public double EndedWithin(double days)
    {
        if (days <= 0)
            return 0;
        var worn = Math.Pow(AgeDays / ScaleDays, Shape);
        // So far past any life that the powers overflow.
        return double.IsInfinity(worn) ? 1 : -Expm1(worn - Math.Pow((AgeDays + days) / ScaleDays, Shape));
    }

    // exp(x) − 1 for x ≤ 0, true for small x too.
    private static double Expm1(double x)
    {
        var half = Math.Tanh(x / 2);
        return x < -30 ? -1 : 2 * half / (1 - half);
    }
}
