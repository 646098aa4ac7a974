namespace HairClinic.Domain.Wear.Curves;

/// <summary>A share that was counted, with Wilson's score interval of 95 %: it stays within 0 and 1 and does not collapse at either end.</summary>
public readonly record struct BinomialProportion(int Count, int Of)
{
    // 97.5 % point of the normal distribution.
    private const double Z = ZScores.NinetyFivePercent;

    /// <summary>Not a number where nothing was counted.</summary>
    public double Share => (double)Count / Of;

    public double Lower => Of == 0 ? 0 : Math.Max(0, Middle - Reach);

    public double Upper => Of == 0 ? 1 : Math.Min(1, Middle + Reach);

    private double Middle => (Share + Z * Z / (2 * Of)) / (1 + Z * Z / Of);

    private double Reach => Z * Math.Sqrt(Share * (1 - Share) / Of + Z * Z / (4.0 * Of * Of)) / (1 + Z * Z / Of);

    public static BinomialProportion operator +(BinomialProportion one, BinomialProportion other) =>
        new(one.Count + other.Count, one.Of + other.Of);
}
