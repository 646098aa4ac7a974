namespace HairClinic.Domain.Replacement;

/// <summary>How often a workshop's unit must be made again: a Beta belief, counted in orders.</summary>
/// <param name="Remade">Pseudo-orders remade, and since.</param>
/// <param name="Kept">Pseudo-orders accepted, and since.</param>
public readonly record struct RemakeRate(double Remade, double Kept)
{
    /// <summary>One in twenty, weighing like twenty orders (common practice, no source).</summary>
    public static readonly RemakeRate Usual = new(1, 19);

    /// <summary>The chance that the next order is remade.</summary>
    public double Mean => Remade + Kept > 0 ? Remade / (Remade + Kept) : 0;

    public RemakeRate Seen(int remade, int kept) => new(Remade + remade, Kept + kept);
}
