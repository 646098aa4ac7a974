namespace HairClinic.Domain.Wear.Curves;

/// <summary>Observed and expected ends of each group, and their covariance, summed over the times on which something ended.</summary>
internal sealed class LogRankSum(int size)
{
    private readonly double[] _count = new double[size];
    private readonly double[] _observed = new double[size];
    private readonly double[] _expected = new double[size];

    public double[,] Variance { get; } = new double[size, size];

    public LogRankGroupResult[] Groups =>
        [.. Enumerable.Range(0, size).Select(g => new LogRankGroupResult(_count[g], _observed[g], _expected[g]))];

    /// <summary>The groups that were ever at risk when something ended.</summary>
    public int[] Compared => [.. Enumerable.Range(0, size).Where(g => _expected[g] > 0)];

    public void AddStratum(ReadOnlySpan<Spell> spells, ReadOnlySpan<int> groups, ReadOnlySpan<int> strata, int layer)
    {
        var rows = new List<(double Time, bool Ended, double Weight, int Group)>();
        for (var i = 0; i < spells.Length; i++)
        {
            if (strata.IsEmpty || strata[i] == layer)
                rows.Add((spells[i].Lower, spells[i].End == SpellEnd.At, spells[i].Weight, groups[i]));
        }
        rows.Sort(static (a, b) => a.Time.CompareTo(b.Time));
        var atRisk = new double[size];
        foreach (var row in rows)
        {
            atRisk[row.Group] += row.Weight;
            _count[row.Group] += row.Weight;
        }
        var ended = new double[size];
        var left = new double[size];
        for (int first = 0, next; first < rows.Count; first = next)
        {
            Array.Clear(ended);
            Array.Clear(left);
            for (next = first; next < rows.Count && rows[next].Time == rows[first].Time; next++)
            {
                left[rows[next].Group] += rows[next].Weight;
                if (rows[next].Ended)
                    ended[rows[next].Group] += rows[next].Weight;
            }
            AddTime(atRisk, ended);
            for (var g = 0; g < size; g++)
                atRisk[g] = Math.Max(0, atRisk[g] - left[g]);
        }
    }

    private void AddTime(double[] atRisk, double[] ended)
    {
        var (all, events) = (atRisk.Sum(), ended.Sum());
        if (events == 0)
            return;
        var factor = all > 1 ? events * (all - events) / (all - 1) : 0;
        for (var g = 0; g < size; g++)
        {
            var share = atRisk[g] / all;
            _observed[g] += ended[g];
            _expected[g] += events * share;
            for (var h = 0; h < size; h++)
                Variance[g, h] += factor * share * ((g == h ? 1 : 0) - atRisk[h] / all);
        }
    }
}
