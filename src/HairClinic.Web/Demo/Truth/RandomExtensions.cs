namespace HairClinic.Web.Demo.Truth;

/// <summary>Chance for show, not for secrets: a fixed seed makes the same book again.</summary>
public static class RandomExtensions
{
    public static bool Happens(this Random random, double chance) => random.NextDouble() < chance;

    /// <summary>Whole days, both ends included.</summary>
    public static int Days(this Random random, int from, int through) => random.Next(from, through + 1);

    /// <summary>Standard normal (Box and Muller).</summary>
    public static double Normal(this Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Standard smallest extreme value: the logarithm of a unit exponential.</summary>
    public static double SmallestExtreme(this Random random) => Math.Log(-Math.Log(1 - random.NextDouble()));
}
