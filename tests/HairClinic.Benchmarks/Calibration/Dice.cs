using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>Seeded draws: the same seed tells the same stories.</summary>
internal sealed class Dice(int seed)
{
    private readonly Random random = new(seed);

    public int Whole(int from, int through) => random.Next(from, through + 1);

    public bool Chance(double chance) => random.NextDouble() < chance;

    public double Normal() => Math.Sqrt(-2 * Math.Log(Above0())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>ε of the model.</summary>
    public double Noise(LifeDistribution distribution) =>
        distribution == LifeDistribution.Weibull ? Math.Log(-Math.Log(Above0())) : Normal();

    /// <summary>Chi-squared with four degrees of freedom: two exponentials, doubled.</summary>
    public double ChiSquaredOf4() => -2 * Math.Log(Above0() * Above0());

    /// <summary>Beta(1, b).</summary>
    public double BetaOf1(double b) => 1 - Math.Pow(Above0(), 1 / b);

    public T Of<T>(IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];

    private double Above0() => 1 - random.NextDouble();
}
