namespace HairClinic.Domain.LoadAhead;

/// <summary>One value of what all clients share (δ of the fit) and how much it is believed.</summary>
/// <param name="Shift">In standard deviations of δ.</param>
public readonly record struct LoadScenario(double Shift, double Share)
{
    /// <summary>Gauss's rule of three for a normal: exact where the load bends gently with δ.</summary>
    public static readonly IReadOnlyList<LoadScenario> Three =
    [
        new(-1.7320508075688772, 1 / 6.0),
        new(0, 2 / 3.0),
        new(1.7320508075688772, 1 / 6.0),
    ];
}
