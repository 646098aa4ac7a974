using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A window: the days by which one in ten and nine in ten have ended.</summary>
public sealed class WindowOptions(string low, string high, double? usualLow = null, double? usualHigh = null)
{
    // Narrower and wider ones lose digits in the model, and say nothing that was ever seen.
    private const double Narrowest = 1.001;
    private const double Widest = 1e6;

    public NumberOption Low { get; } =
        new(low, "Days by which one in ten has ended, before anything was seen.", 1e-6, 1e9, unlessSaid: usualLow);

    public NumberOption High { get; } =
        new(high, "Days by which nine in ten have ended, before anything was seen.", 1e-6, 1e9, unlessSaid: usualHigh);

    public bool IsSaid(ParseResult result) => Low.IsSaid(result) || High.IsSaid(result);

    /// <exception cref="Refusal">It is no window.</exception>
    public WindowPrior Read(ParseResult result, LifeDistribution distribution)
    {
        var (from, to) = (Low.Number(result), High.Number(result));
        return to >= Narrowest * from && to <= Widest * from
            ? WindowPrior.FromWindow(distribution, from, to)
            : throw new Refusal(
                "A window's {0} must be {1} to {2} times its {3}: they are {4} and {5}.",
                High.Option.Name,
                Narrowest,
                Widest,
                Low.Option.Name,
                to,
                from
            );
    }
}
