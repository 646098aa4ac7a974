using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Cholesky's factor of a positive definite matrix, scaled to a unit diagonal first.</summary>
internal sealed class ScaledCholesky
{
    private readonly Cholesky<double> _factor;
    private readonly Vector<double> _scales;

    private ScaledCholesky(Cholesky<double> factor, Vector<double> scales)
    {
        (_factor, _scales) = (factor, scales);
        var pivots = factor.Factor.Diagonal();
        Weakest = pivots.MinimumIndex();
        SmallestPivot = pivots[Weakest] * pivots[Weakest];
    }

    /// <summary>Of the scaled matrix: 1 where nothing is entangled, near 0 where something cannot be told apart.</summary>
    public double SmallestPivot { get; }

    /// <summary>Where that pivot stands.</summary>
    public int Weakest { get; }

    /// <summary>Of the matrix itself.</summary>
    public double LogDeterminant => _factor.DeterminantLn - 2 * _scales.PointwiseLog().Sum();

    /// <param name="matrix">Its lower half is read.</param>
    /// <param name="ridge">Added to the scaled diagonal.</param>
    /// <param name="culprit">Where it shows that the matrix is not positive definite.</param>
    /// <returns>Null where it is not.</returns>
    public static ScaledCholesky? TryFactorize(double[] matrix, int size, double ridge, out int culprit)
    {
        var diagonal = Vector<double>.Build.Dense(size, i => matrix[i * size + i]);
        // A diagonal that is not positive is lifted by its own size where a ridge is asked for.
        culprit = diagonal.Find(d => !double.IsFinite(d) || d <= 0 && ridge == 0, Zeros.Include)?.Item1 ?? size;
        if (culprit < size)
            return null;
        var scales = diagonal.Map(d => 1 / Math.Sqrt(Math.Max(Math.Abs(d), 1e-300)));
        var scaled = Matrix<double>.Build.Dense(
            size,
            size,
            (i, j) => matrix[Math.Max(i, j) * size + Math.Min(i, j)] * scales[i] * scales[j] + (i == j ? ridge : 0)
        );
        if (TryFactorize(scaled) is { } factor)
            return new(factor, scales);
        culprit = Enumerable.Range(0, size).First(k => TryFactorize(scaled.SubMatrix(0, k + 1, 0, k + 1)) is null);
        return null;
    }

    public double[] Solve(double[] right) =>
        _factor.Solve(Vector<double>.Build.Dense(right).PointwiseMultiply(_scales)).PointwiseMultiply(_scales).ToArray();

    public double[] Inverse()
    {
        var scale = Matrix<double>.Build.DiagonalOfDiagonalVector(_scales);
        return (scale * _factor.Solve(Matrix<double>.Build.DenseIdentity(_scales.Count)) * scale).ToRowMajorArray();
    }

    private static Cholesky<double>? TryFactorize(Matrix<double> matrix)
    {
        try
        {
            return matrix.Cholesky();
        }
        catch (ArgumentException)
        {
            // MathNet's answer to a matrix that is not positive definite.
            return null;
        }
    }
}
