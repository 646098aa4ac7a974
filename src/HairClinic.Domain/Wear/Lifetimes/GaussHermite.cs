namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Gauss–Hermite rule: ∫ f(x)·exp(−x²) dx ≈ Σ wᵢ·f(xᵢ).</summary>
internal sealed class GaussHermite
{
    private GaussHermite(int count)
    {
        Nodes = new double[count];
        LogWeights = new double[count];
        for (var i = 0; i < (count + 1) / 2; i++)
        {
            var x = Root(count, i);
            var (_, slope) = Polynomial(count, x);
            var logWeight = Math.Log(2) - 2 * Math.Log(Math.Abs(slope));
            (Nodes[i], Nodes[count - 1 - i]) = (-x, x);
            LogWeights[i] = LogWeights[count - 1 - i] = logWeight;
        }
    }

    /// <summary>In ascending order.</summary>
    public double[] Nodes { get; }

    public double[] LogWeights { get; }

    /// <summary>About each client's mode.</summary>
    public static GaussHermite Client { get; } = new(21);

    /// <summary>Over the practice's effect, which is small beside the noise.</summary>
    public static GaussHermite Practice { get; } = new(9);

    private double Root(int count, int i)
    {
        // Starting points from the largest root down (common in print since Stroud and Secrest, 1966; from memory).
        var x = i switch
        {
            0 => Math.Sqrt(2 * count + 1) - 1.85575 * Math.Pow(2 * count + 1, -1 / 6.0),
            1 => Largest(0) - 1.14 * Math.Pow(count, 0.426) / Largest(0),
            2 => 1.86 * Largest(1) - 0.86 * Largest(0),
            3 => 1.91 * Largest(2) - 0.91 * Largest(1),
            _ => 2 * Largest(i - 1) - Largest(i - 2),
        };
        for (var step = 0; step < 100; step++)
        {
            var (value, slope) = Polynomial(count, x);
            var change = value / slope;
            x -= change;
            if (Math.Abs(change) < 1e-15)
                break;
        }
        return x;

        double Largest(int k) => Nodes[count - 1 - k];
    }

    // Orthonormal Hermite polynomials, so that nothing overflows.
    private static (double Value, double Slope) Polynomial(int count, double x)
    {
        var (before, value) = (0.0, Math.Pow(Math.PI, -0.25));
        for (var j = 1; j <= count; j++)
            (before, value) = (value, x * Math.Sqrt(2.0 / j) * value - Math.Sqrt((j - 1.0) / j) * before);
        return (value, Math.Sqrt(2.0 * count) * before);
    }
}
