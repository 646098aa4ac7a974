namespace HairClinic.Domain.Wear.Watch;

/// <summary>Cholesky's factor of a small positive definite matrix, made again and again in the same place.</summary>
internal sealed class SymmetricFactor(int size)
{
    private readonly double[] _lower = new double[size * size];

    public double LogDeterminant { get; private set; }

    /// <returns>Whether the matrix is positive definite; else the factor is of no use.</returns>
    public bool TryFactorize(ReadOnlySpan<double> matrix)
    {
        LogDeterminant = 0;
        for (var j = 0; j < size; j++)
        {
            for (var i = j; i < size; i++)
            {
                var sum = matrix[i * size + j];
                for (var k = 0; k < j; k++)
                    sum -= _lower[i * size + k] * _lower[j * size + k];
                if (i > j)
                {
                    _lower[i * size + j] = sum / _lower[j * size + j];
                    continue;
                }
                if (!(sum > 1e-12 * Math.Abs(matrix[j * size + j])))
                    return false;
                _lower[j * size + j] = Math.Sqrt(sum);
                LogDeterminant += Math.Log(sum);
            }
        }
        return true;
    }

    /// <summary>Turns a right side into the solution.</summary>
    public void Solve(Span<double> right)
    {
        for (var i = 0; i < size; i++)
        {
            for (var k = 0; k < i; k++)
                right[i] -= _lower[i * size + k] * right[k];
            right[i] /= _lower[i * size + i];
        }
        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++)
                right[i] -= _lower[k * size + i] * right[k];
            right[i] /= _lower[i * size + i];
        }
    }
}
