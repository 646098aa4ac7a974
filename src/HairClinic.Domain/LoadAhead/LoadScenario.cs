using HairClinic.Domain.Wear.Curves;

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

    /// <summary>The mean over the scenarios; the variance holds the clients' own chance and how far the scenarios lie apart.</summary>
    /// <param name="counts">One a scenario.</param>
    internal static (double Mean, double Variance) Mixed(Func<int, (double Mean, double Variance)> counts)
    {
        var (mean, variance) = (0.0, 0.0);
        for (var scenario = 0; scenario < Three.Count; scenario++)
        {
            mean += Three[scenario].Share * counts(scenario).Mean;
            variance += Three[scenario].Share * counts(scenario).Variance;
        }
        for (var scenario = 0; scenario < Three.Count; scenario++)
            variance += Three[scenario].Share * Math.Pow(counts(scenario).Mean - mean, 2);
        return (mean, variance);
    }

    /// <summary>Within which it lies with 80 % chance; never below 0.</summary>
    internal static (double From, double To) Band(double mean, double variance) =>
        (Math.Max(0, mean - NormalBand.EightyPercent * Math.Sqrt(variance)), mean + NormalBand.EightyPercent * Math.Sqrt(variance));
}
