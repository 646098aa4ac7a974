using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Gauss's rule of a symmetric tridiagonal matrix: its eigenvalues, and the squares of their vectors' first entries.</summary>
/// <remarks>Golub and Welsch (1969).</remarks>
internal static class GaussQuadrature
{
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
