namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Gauss–Hermite rule: ∫ f(x)·exp(−x²) dx ≈ Σ wᵢ·f(xᵢ).</summary>
internal sealed class GaussHermite
{
    private GaussHermite(int count)
    {
        // The three-term recursion of the Hermite polynomials.
        (Nodes, var shares) = GaussQuadrature.FromTridiagonal(
            new double[count],
            [.. Enumerable.Range(1, count - 1).Select(k => Math.Sqrt(k / 2.0))]
        );
        LogWeights = [.. shares.Select(share => Math.Log(share) + Math.Log(Math.PI) / 2)];
    }

    /// <summary>In ascending order.</summary>
    public double[] Nodes { get; }

    public double[] LogWeights { get; }

    /// <summary>About a mode, for what is nearly normal there; a client's effect is not, where the noise is small (<see cref="EffectQuadrature"/>).</summary>
    public static GaussHermite Client { get; } = new(21);

    /// <summary>Over the practice's effect, which is small beside the noise.</summary>
    public static GaussHermite Practice { get; } = new(9);
}
