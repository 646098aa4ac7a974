using System.Numerics;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The log-likelihood of rows whose clients do not differ, at one set of parameters (δ, β…, s).</summary>
/// <remarks>
/// Rows are taken in fixed chunks whose sums are added in order: the same sums every time, however many cores work.
/// Within a chunk, blocks small enough for the nearest cache go through every column before the next block.
/// </remarks>
internal sealed class PlainLikelihood(LifeDistribution distribution, LifeRows rows)
{
    private const int Chunk = 1 << 14;
    private const int Block = 256;

    public FitSums At(double[] parameters)
    {
        var chunks = new FitSums[(rows.Count + Chunk - 1) / Chunk];
        if (chunks.Length > 1)
            Parallel.For(0, chunks.Length, c => chunks[c] = Sum(parameters, c * Chunk));
        else if (chunks.Length == 1)
            chunks[0] = Sum(parameters, 0);
        var total = new FitSums(parameters.Length);
        foreach (var chunk in chunks)
            total.Add(chunk);
        total.Mirror();
        return total;
    }

    private FitSums Sum(double[] parameters, int first)
    {
        var sums = new FitSums(parameters.Length);
        var block = new PlainBlock(distribution, rows, parameters, Block);
        var end = Math.Min(first + Chunk, rows.Count);
        for (var start = first; start < end; start += Block)
            Gather(block, start, Math.Min(Block, end - start), sums);
        return sums;
    }

    private void Gather(PlainBlock block, int start, int length, FitSums sums)
    {
        var (value, slope, bend) = block.Fill(start, length);
        var last = sums.Size - 1;
        sums.Value += value;
        sums.Gradient[last] += slope;
        sums.Hessian[last * sums.Size + last] += bend;
        var loading = block.Loading;
        for (var k = 0; k < last; k++)
        {
            var column = k == 0 ? loading : rows.Columns[k - 1].AsSpan(start, length);
            sums.Gradient[k] += column.IsEmpty ? Sum(block.E) : Dot(block.E, column);
            sums.Hessian[last * sums.Size + k] += column.IsEmpty ? Sum(block.ES) : Dot(block.ES, column);
            var weighted = column.IsEmpty ? block.EE : block.Times(column);
            sums.Hessian[k * sums.Size] += loading.IsEmpty ? Sum(weighted) : Dot(weighted, loading);
            for (var j = 1; j <= k; j++)
                sums.Hessian[k * sums.Size + j] += Dot(weighted, rows.Columns[j - 1].AsSpan(start, length));
        }
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        var wide = Vector<double>.Zero;
        var i = 0;
        for (; i <= values.Length - Vector<double>.Count; i += Vector<double>.Count)
            wide += new Vector<double>(values[i..]);
        var sum = Vector.Sum(wide);
        for (; i < values.Length; i++)
            sum += values[i];
        return sum;
    }

    private static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var (even, odd) = (Vector<double>.Zero, Vector<double>.Zero);
        var (i, width) = (0, Vector<double>.Count);
        for (; i <= left.Length - 2 * width; i += 2 * width)
        {
            even = Vector.FusedMultiplyAdd(new Vector<double>(left[i..]), new Vector<double>(right[i..]), even);
            odd = Vector.FusedMultiplyAdd(new Vector<double>(left[(i + width)..]), new Vector<double>(right[(i + width)..]), odd);
        }
        var sum = Vector.Sum(even + odd);
        for (; i < left.Length; i++)
            sum += left[i] * right[i];
        return sum;
    }
}
