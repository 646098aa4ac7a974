namespace HairClinic.Domain.Wear.Curves;

/// <summary>Expectation and maximisation for Turnbull's estimate, two steps and then a leap along them.</summary>
/// <remarks>
/// Plain steps crawl where a mass goes to nothing. The leap (squared extrapolation: Varadhan and Roland, Scandinavian Journal
/// of Statistics 35, 2008; from memory) is taken only if the likelihood does not fall by it, so the end is the same.
/// </remarks>
internal sealed class TurnbullMaximizer(ReadOnlySpan<Spell> spells, int[] from, int[] to)
{
    private readonly double[] _weights = [.. spells.ToArray().Select(s => s.Weight)];
    private double[] _sums = [];
    private double[] _slopes = [];

    /// <param name="mass">Where it begins, summing to 1; afterwards where it ended.</param>
    /// <returns>Steps taken, and the largest change of any mass in the last.</returns>
    public (int Steps, double Change) Maximize(double[] mass, double settled, int most)
    {
        (_sums, _slopes) = (new double[mass.Length + 1], new double[mass.Length + 1]);
        var (once, twice, steps, floor) = (new double[mass.Length], new double[mass.Length], 0, double.NegativeInfinity);
        while (true)
        {
            var height = Step(mass, once);
            steps++;
            if (height < floor)
            {
                // The leap was too far: back to where two plain steps had come.
                twice.CopyTo(mass, 0);
                floor = double.NegativeInfinity;
                continue;
            }
            var change = 0.0;
            for (var j = 0; j < mass.Length; j++)
                change = Math.Max(change, Math.Abs(once[j] - mass[j]));
            if (change <= settled || steps >= most)
            {
                once.CopyTo(mass, 0);
                return (steps, change);
            }
            floor = Step(once, twice);
            steps++;
            Leap(mass, once, twice);
        }
    }

    /// <returns>The logarithm of the likelihood at <paramref name="mass"/>.</returns>
    private double Step(double[] mass, double[] next)
    {
        for (var j = 0; j < mass.Length; j++)
            _sums[j + 1] = _sums[j] + mass[j];
        Array.Clear(_slopes);
        var (height, total) = (0.0, 0.0);
        // Each spell spreads its weight over the cells it covers: one rise where they begin, one fall where they end.
        for (var i = 0; i < _weights.Length; i++)
        {
            var covered = _sums[to[i] + 1] - _sums[from[i]];
            var share = _weights[i] / covered;
            _slopes[from[i]] += share;
            _slopes[to[i] + 1] -= share;
            height += _weights[i] * Math.Log(covered);
            total += _weights[i];
        }
        var level = 0.0;
        for (var j = 0; j < mass.Length; j++)
        {
            level += _slopes[j];
            next[j] = mass[j] * Math.Max(0, level) / total;
        }
        return height;
    }

    // Into mass. None becomes nothing by a leap: a step could not bring it back.
    private static void Leap(double[] mass, double[] once, double[] twice)
    {
        var (speed, turn) = (0.0, 0.0);
        for (var j = 0; j < mass.Length; j++)
        {
            speed += Math.Pow(once[j] - mass[j], 2);
            turn += Math.Pow(twice[j] - 2 * once[j] + mass[j], 2);
        }
        var reach = turn > 0 ? Math.Max(1, Math.Sqrt(speed / turn)) : 1;
        var sum = 0.0;
        for (var j = 0; j < mass.Length; j++)
        {
            var far = mass[j] + 2 * reach * (once[j] - mass[j]) + reach * reach * (twice[j] - 2 * once[j] + mass[j]);
            mass[j] = Math.Max(far, 0.1 * twice[j]);
            sum += mass[j];
        }
        for (var j = 0; j < mass.Length; j++)
            mass[j] /= sum;
    }
}
