using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Gauss's rule of a symmetric tridiagonal matrix: its eigenvalues, and the squares of their vectors' first entries.</summary>
/// <remarks>Golub and Welsch (1969).</remarks>
internal static class GaussQuadrature
{
    /// <summary>The rule of so many nodes that has a distribution's own moments: exact for smooth questions about it.</summary>
    /// <param name="shares">Above 0; they need not add up to 1.</param>
    /// <remarks>Lanczos' recursion on the shares gives the rule's matrix; its eigenvalues are the nodes.</remarks>
    public static (double[] Nodes, double[] Shares) OfDistribution(double[] at, double[] shares, int count)
    {
        var total = shares.Sum();
        var (diagonal, beside) = (new double[count], new double[count]);
        var (before, current, next) = (new double[at.Length], Array.ConvertAll(shares, s => Math.Sqrt(s / total)), new double[at.Length]);
        var (kept, link) = (0, 0.0);
        while (kept < count)
        {
            VectorSums.Multiply(current, at, next);
            diagonal[kept] = VectorSums.Dot(current, next);
            VectorSums.AddScaled(next, current, -diagonal[kept]);
            VectorSums.AddScaled(next, before, -link);
            link = Math.Sqrt(VectorSums.Dot(next, next));
            beside[kept++] = link;
            // Fewer different nodes than asked for, or as good as one.
            if (link < 1e-12 * (1 + Math.Abs(diagonal[kept - 1])))
                break;
            for (var i = 0; i < next.Length; i++)
                next[i] /= link;
            (before, current, next) = (current, next, before);
        }
        return FromTridiagonal(diagonal[..kept], beside);
    }

    /// <param name="beside">beside[k] stands between k and k + 1; more are not read.</param>
    /// <returns>Nodes in ascending order, and shares that add up to 1.</returns>
    public static (double[] Nodes, double[] Shares) FromTridiagonal(double[] diagonal, double[] beside)
    {
        var matrix = Matrix<double>.Build.DenseOfDiagonalArray(diagonal);
        for (var k = 1; k < diagonal.Length; k++)
            matrix[k, k - 1] = matrix[k - 1, k] = beside[k - 1];
        var parts = matrix.Evd(Symmetricity.Symmetric);
        return ([.. parts.EigenValues.Select(v => v.Real)], [.. parts.EigenVectors.Row(0).Select(v => v * v)]);
    }
}
