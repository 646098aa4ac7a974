namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A unit's Weibull life, as shape and characteristic life.</summary>
public sealed class WeibullOptions(bool required)
{
    public NumberOption Shape { get; } = new("--life-shape", "Weibull shape of a unit's life.", 0.05, 1e6, required);

    public NumberOption Scale { get; } = new("--life-scale", "Characteristic life, worn days.", 1e-6, 1e9, required);
}
