namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Gauss's rule of a symmetric tridiagonal matrix: its eigenvalues, and the squares of their vectors' first entries.</summary>
/// <remarks>The implicit QL method with Wilkinson's shifts; only the first entries are carried along (Golub and Welsch, 1969).</remarks>
internal static class GaussRule
{
    /// <param name="diagonal">Becomes the places, in ascending order.</param>
    /// <param name="beside">beside[k] stands between k and k + 1; used up.</param>
    /// <param name="shares">Becomes the shares; as long as the diagonal.</param>
    public static void Solve(Span<double> diagonal, Span<double> beside, Span<double> shares)
    {
        shares.Clear();
        shares[0] = 1;
        beside[^1] = 0;
        for (var first = 0; first < diagonal.Length; first++)
        {
            while (Block(diagonal, beside, first) is var last && last > first)
                Sweep(diagonal, beside, shares, first, last);
        }
        foreach (ref var share in shares)
            share *= share;
        diagonal.Sort(shares);
    }

    // The last place that hangs together with the first.
    private static int Block(Span<double> diagonal, Span<double> beside, int first)
    {
        var last = first;
        while (
            last < diagonal.Length - 1
            && Math.Abs(beside[last]) > double.Epsilon + 1e-16 * (Math.Abs(diagonal[last]) + Math.Abs(diagonal[last + 1]))
        )
            last++;
        return last;
    }

    private static void Sweep(Span<double> diagonal, Span<double> beside, Span<double> entries, int first, int last)
    {
        var g = (diagonal[first + 1] - diagonal[first]) / (2 * beside[first]);
        g = diagonal[last] - diagonal[first] + beside[first] / (g + Math.CopySign(double.Hypot(g, 1), g));
        var (sine, cosine, lag) = (1.0, 1.0, 0.0);
        for (var i = last - 1; i >= first; i--)
        {
            var (f, b) = (sine * beside[i], cosine * beside[i]);
            var length = double.Hypot(f, g);
            beside[i + 1] = length;
            // Fallen apart on the way: begin again with what hangs together.
            if (length == 0)
            {
                diagonal[i + 1] -= lag;
                beside[last] = 0;
                return;
            }
            (sine, cosine) = (f / length, g / length);
            g = diagonal[i + 1] - lag;
            var turn = (diagonal[i] - g) * sine + 2 * cosine * b;
            lag = sine * turn;
            diagonal[i + 1] = g + lag;
            g = cosine * turn - b;
            (entries[i + 1], entries[i]) = (sine * entries[i] + cosine * entries[i + 1], cosine * entries[i] - sine * entries[i + 1]);
        }
        diagonal[first] -= lag;
        beside[first] = g;
        beside[last] = 0;
    }
}
