namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Where a row's ln T lies apart from what is fitted.</summary>
/// <param name="Offset">m: added to the centre.</param>
/// <param name="Sigma">σ: multiplied by eˢ.</param>
/// <param name="Loading">How much of δ and b the row takes on.</param>
public readonly record struct RowPlace(double Offset, double Sigma, double Loading)
{
    /// <summary>One window for all, of no account: plain maximum likelihood.</summary>
    public static readonly RowPlace Plain = new(0, 1, 1);
}
