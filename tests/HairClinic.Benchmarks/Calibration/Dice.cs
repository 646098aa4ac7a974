using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>Seeded draws: the same seed tells the same stories.</summary>
internal sealed class Dice(int seed)
{
    private readonly Random _random = new(seed);

    public int Whole(int from, int through) => _random.Next(from, through + 1);

    public bool Chance(double chance) => _random.NextDouble() < chance;

    public double Normal() => Math.Sqrt(-2 * Math.Log(Share())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>ε of the model.</summary>
    public double Noise(LifeDistribution distribution) =>
        distribution == LifeDistribution.Weibull ? Math.Log(-Math.Log(Share())) : Normal();

    /// <summary>Chi-squared with four degrees of freedom: two exponentials, doubled.</summary>
    public double ChiSquaredOf4() => -2 * Math.Log(Share() * Share());

    /// <summary>Beta(1, b).</summary>
    public double BetaOf1(double b) => 1 - Math.Pow(Share(), 1 / b);

    public T Of<T>(IReadOnlyList<T> choices) => choices[_random.Next(choices.Count)];

    /// <summary>Above 0, up to 1.</summary>
    public double Share() => 1 - _random.NextDouble();
}
