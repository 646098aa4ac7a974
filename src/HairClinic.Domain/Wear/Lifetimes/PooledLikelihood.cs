namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The log-likelihood of rows whose clients do not differ, at one set of parameters (δ, β…, s).</summary>
/// <remarks>
/// Rows are taken in fixed chunks whose sums are added in order: the same sums every time, however many cores work.
/// Within a chunk, blocks small enough for the nearest cache go through every column before the next block.
/// </remarks>
internal sealed class PooledLikelihood(LifeDistribution distribution, LifetimeFitRows rows)
{
    private const int Chunk = 1 << 14;
    private const int Block = 256;

    /// <param name="stride">1 for all rows; n for one block of rows in n, as a sample.</param>
    public LogLikelihoodSums Evaluate(double[] parameters, int stride = 1) => Sum(parameters, stride, squares: false);

    /// <summary>
    /// Least squares: the gradient holds Σ w·y·x, the Hessian Σ w·x·x, both over σ²; the value Σ w·y², and the last place of the
    /// gradient Σ w.
    /// </summary>
    public LogLikelihoodSums LeastSquaresSums(int stride) => Sum(new double[rows.Columns.Length + 2], stride, squares: true);

    private LogLikelihoodSums Sum(double[] parameters, int stride, bool squares)
    {
        var chunks = new LogLikelihoodSums[(rows.Length + Chunk - 1) / Chunk];
        if (chunks.Length > 1)
            Parallel.For(0, chunks.Length, c => chunks[c] = Sum(parameters, c * Chunk, stride, squares));
        else if (chunks.Length == 1)
            chunks[0] = Sum(parameters, 0, stride, squares);
        var total = new LogLikelihoodSums(parameters.Length);
        foreach (var chunk in chunks)
            total.Add(chunk);
        total.SymmetrizeHessian();
        return total;
    }

    private LogLikelihoodSums Sum(double[] parameters, int first, int stride, bool squares)
    {
        var sums = new LogLikelihoodSums(parameters.Length);
        var block = new LikelihoodBlock(distribution, rows, parameters, Block);
        var end = Math.Min(first + Chunk, rows.Length);
        for (var start = first; start < end; start += Block * stride)
        {
            var length = Math.Min(Block, end - start);
            if (squares)
            {
                var (value, weights) = block.FillLeastSquares(start, length);
                sums.Value += value;
                sums.Gradient[^1] += weights;
            }
            else
            {
                var (value, slope, bend) = block.Fill(start, length);
                sums.Value += value;
                sums.Gradient[^1] += slope;
                sums.Hessian[^1] += bend;
            }
            Gather(block, start, length, sums);
        }
        return sums;
    }

    private void Gather(LikelihoodBlock block, int start, int length, LogLikelihoodSums sums)
    {
        var last = sums.Size - 1;
        var loading = block.Loading;
        for (var k = 0; k < last; k++)
        {
            var column = k == 0 ? loading : rows.Columns[k - 1].AsSpan(start, length);
            var row = sums.Hessian.AsSpan(k * sums.Size, sums.Size);
            var weighted = column.IsEmpty ? block.EE : block.WeightByCurvature(column);
            if (column.IsEmpty)
            {
                sums.Gradient[k] += VectorSums.Sum(block.E);
                sums.Hessian[last * sums.Size + k] += VectorSums.Sum(block.ES);
            }
            else
            {
                var (slope, tilt) = VectorSums.DotPair(column, block.E, block.ES);
                sums.Gradient[k] += slope;
                sums.Hessian[last * sums.Size + k] += tilt;
            }
            row[0] += loading.IsEmpty ? VectorSums.Sum(weighted) : VectorSums.Dot(weighted, loading);
            var j = 1;
            for (; j < k; j += 2)
            {
                var (first, second) = VectorSums.DotPair(
                    weighted,
                    rows.Columns[j - 1].AsSpan(start, length),
                    rows.Columns[j].AsSpan(start, length)
                );
                (row[j], row[j + 1]) = (row[j] + first, row[j + 1] + second);
            }
            if (j == k)
                row[j] += VectorSums.Dot(weighted, rows.Columns[j - 1].AsSpan(start, length));
        }
    }
}

/// <summary>A log-likelihood with its gradient and Hessian (both triangles), summed part by part.</summary>
internal sealed class LogLikelihoodSums(int size)
{
    public int Size { get; } = size;

    public double Value { get; set; }

    public double[] Gradient { get; } = new double[size];

    /// <summary>Row by row; while summing, only j ≤ i is filled.</summary>
    public double[] Hessian { get; } = new double[size * size];

    public bool IsFinite =>
        double.IsFinite(Value) && Array.TrueForAll(Gradient, double.IsFinite) && Array.TrueForAll(Hessian, double.IsFinite);

    public void Add(LogLikelihoodSums part)
    {
        Value += part.Value;
        for (var i = 0; i < Gradient.Length; i++)
            Gradient[i] += part.Gradient[i];
        for (var i = 0; i < Hessian.Length; i++)
            Hessian[i] += part.Hessian[i];
    }

    public void SymmetrizeHessian()
    {
        for (var i = 0; i < Size; i++)
        {
            for (var j = 0; j < i; j++)
                Hessian[j * Size + i] = Hessian[i * Size + j];
        }
    }
}
