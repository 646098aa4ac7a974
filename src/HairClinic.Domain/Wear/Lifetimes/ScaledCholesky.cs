namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Cholesky's factor of a positive definite matrix, scaled to a unit diagonal first.</summary>
internal sealed class ScaledCholesky
{
    private readonly double[] _factor;
    private readonly double[] _scales;

    private ScaledCholesky(double[] factor, double[] scales, double smallest, int weakest) =>
        (_factor, _scales, SmallestPivot, Weakest) = (factor, scales, smallest, weakest);

    /// <summary>Of the scaled matrix: 1 where nothing is entangled, near 0 where something cannot be told apart.</summary>
    public double SmallestPivot { get; }

    /// <summary>Where that pivot stands.</summary>
    public int Weakest { get; }

    /// <returns>Null where the matrix is not positive definite; <paramref name="culprit"/> is where that shows.</returns>
    /// <param name="ridge">Added to the scaled diagonal.</param>
    public static ScaledCholesky? TryFactorize(double[] matrix, int size, double ridge, out int culprit)
    {
        var scales = new double[size];
        var factor = new double[size * size];
        for (culprit = 0; culprit < size; culprit++)
        {
            // A diagonal that is not positive is lifted by its own size where a ridge is asked for.
            var diagonal = matrix[culprit * size + culprit];
            if (!double.IsFinite(diagonal) || (diagonal <= 0 && ridge == 0))
                return null;
            scales[culprit] = 1 / Math.Sqrt(Math.Max(Math.Abs(diagonal), 1e-300));
        }
        var (smallest, weakest) = (double.PositiveInfinity, 0);
        for (culprit = 0; culprit < size; culprit++)
        {
            for (var j = 0; j <= culprit; j++)
            {
                var sum = matrix[culprit * size + j] * scales[culprit] * scales[j] + (j == culprit ? ridge : 0);
                for (var k = 0; k < j; k++)
                    sum -= factor[culprit * size + k] * factor[j * size + k];
                if (j < culprit)
                {
                    factor[culprit * size + j] = sum / factor[j * size + j];
                    continue;
                }
                if (!(sum > 0))
                    return null;
                if (sum < smallest)
                    (smallest, weakest) = (sum, culprit);
                factor[j * size + j] = Math.Sqrt(sum);
            }
        }
        return new ScaledCholesky(factor, scales, smallest, weakest);
    }

    public double[] Solve(ReadOnlySpan<double> right)
    {
        var size = _scales.Length;
        var x = new double[size];
        for (var i = 0; i < size; i++)
        {
            var sum = right[i] * _scales[i];
            for (var k = 0; k < i; k++)
                sum -= _factor[i * size + k] * x[k];
            x[i] = sum / _factor[i * size + i];
        }
        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++)
                x[i] -= _factor[k * size + i] * x[k];
            x[i] /= _factor[i * size + i];
        }
        for (var i = 0; i < size; i++)
            x[i] *= _scales[i];
        return x;
    }

    public double[] Inverse()
    {
        var size = _scales.Length;
        var inverse = new double[size * size];
        var unit = new double[size];
        for (var j = 0; j < size; j++)
        {
            Array.Clear(unit);
            unit[j] = 1;
            Solve(unit).CopyTo(inverse, j * size);
        }
        return inverse;
    }
}
