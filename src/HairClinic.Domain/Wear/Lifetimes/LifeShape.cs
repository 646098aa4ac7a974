namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// How ln T lies about its centre when more than one thing may be true of it: a mixture over the doubt of the scale and over what may
/// befall a unit. Kept as a table of ln S, so that a night's many units are quick to look up.
/// </summary>
/// <remarks>
/// Branches of one age factor are summed into one table. Between its points ln S is a cubic through values and slopes: with steps of a
/// twentieth of the narrowest scale its relative error is below 10⁻⁶ of −ln S. Make one a window, and keep it for the batch.
/// </remarks>
public sealed class LifeShape
{
    private const double StepsPerScale = 20;

    // exp(−700) is next to the smallest number there is.
    private const double Gone = -700;

    private readonly double _step;
    private readonly double _from;

    // By group, then point: ln S and its slope times the step.
    private readonly double[][] _tables;
    private readonly double[] _lastFinite;
    private readonly double[] _logWeights;

    private LifeShape(LifeDistribution distribution, IReadOnlyList<LifeBranch> branches)
    {
        var narrowest = branches.Min(b => b.Tau);
        var widest = branches.Max(b => b.Tau);
        _step = narrowest / StepsPerScale;
        // Below it nothing has ended (1 − S < 10⁻¹¹), above it nothing is left.
        var (below, above) = distribution == LifeDistribution.Weibull ? (25, 7) : (7, 38);
        _from = branches.Min(b => b.Shift) - below * widest;
        var to = branches.Max(b => b.Shift) + above * widest;
        var groups = branches.GroupBy(b => b.AgeFactor).OrderBy(g => g.Key).ToList();
        LogAgeFactors = [.. groups.Select(g => Math.Log(g.Key))];
        _logWeights = [.. groups.Select(g => Math.Log(g.Sum(b => b.Weight)))];
        var points = (int)((to - _from) / _step) + 2;
        _tables = [.. groups.Select(g => Table(distribution, [.. g], points))];
        // A new unit's age says nothing: all branches in one, which is looked up most.
        if (groups.Count > 1)
            (_tables, _logWeights) = ([.. _tables, Table(distribution, [.. branches], points)], [.. _logWeights, 0]);
        _lastFinite = [.. _tables.Select(t => _from + (t.Length / 2 - 1) * _step)];
    }

    /// <summary>ln of the multiple of its age that a unit of each group must last at least, never below 0.</summary>
    internal double[] LogAgeFactors { get; }

    /// <param name="branches">Their weights add up to 1.</param>
    /// <exception cref="ArgumentException">There is none, a weight is not above 0, a scale is not, or an age factor is below 1.</exception>
    public static LifeShape Create(LifeDistribution distribution, IReadOnlyList<LifeBranch> branches)
    {
        if (branches.Count == 0 || branches.Any(b => !(b.Weight > 0) || !(b.Tau > 0) || !(b.AgeFactor >= 1) || !double.IsFinite(b.Shift)))
            throw new ArgumentException("A branch has a weight and a scale above 0, and an age factor of at least 1.", nameof(branches));
        return Math.Abs(branches.Sum(b => b.Weight) - 1) < 1e-9
            ? new LifeShape(distribution, branches)
            : throw new ArgumentException("The branches' weights add up to 1.", nameof(branches));
    }

    /// <summary>ln of the chance that a unit takes this group's course and lasts until its ln T is u beyond the centre.</summary>
    internal double LogSurvival(int group, double u)
    {
        if (u <= _from)
            return _logWeights[group];
        if (u >= _lastFinite[group])
            return double.NegativeInfinity;
        var at = (u - _from) / _step;
        var point = (int)at;
        var x = at - point;
        var table = _tables[group].AsSpan(2 * point, 4);
        var (rise, rest) = (table[2] - table[0], 1 - x);
        return table[0] + x * (rise + rest * ((table[1] - rise) * rest - (table[3] - rise) * x));
    }

    /// <summary>ln of the chance to last to some ln T, among those that did not end, nor took a later course, by an age.</summary>
    /// <param name="logAge">Of the worn days so far; −∞ for a new unit.</param>
    /// <param name="centre">Of ln T.</param>
    internal double LogSurvival(double logAge, double logDays, double centre)
    {
        if (double.IsNegativeInfinity(logAge))
            return LogSurvival(_tables.Length - 1, logDays - centre);
        var (top, sum) = (double.NegativeInfinity, 0.0);
        for (var g = 0; g < LogAgeFactors.Length; g++)
        {
            var height = LogSurvival(g, Math.Max(logDays, logAge + LogAgeFactors[g]) - centre);
            if (double.IsNegativeInfinity(height))
                continue;
            if (height > top)
                (sum, top) = (sum * Math.Exp(top - height) + 1, height);
            else
                sum += Math.Exp(height - top);
        }
        return double.IsNegativeInfinity(top) ? top : top + Math.Log(sum);
    }

    private double[] Table(LifeDistribution distribution, LifeBranch[] branches, int points)
    {
        var table = new List<double>(2 * points);
        for (var point = 0; point < points; point++)
        {
            var u = _from + point * _step;
            var (top, sum, slope) = (double.NegativeInfinity, 0.0, 0.0);
            foreach (var branch in branches)
            {
                var z = (u - branch.Shift) / branch.Tau;
                var (log, logSlope) =
                    distribution == LifeDistribution.Weibull ? (-Math.Exp(z), -Math.Exp(z)) : (NormalTail.LogQ(z), -NormalTail.Hazard(z));
                var height = Math.Log(branch.Weight) + log;
                if (height > top)
                {
                    var scale = Math.Exp(top - height);
                    (sum, slope, top) = (sum * scale + 1, slope * scale + logSlope / branch.Tau, height);
                }
                else
                {
                    var share = Math.Exp(height - top);
                    (sum, slope) = (sum + share, slope + share * logSlope / branch.Tau);
                }
            }
            if (top < Gone && table.Count > 0)
                break;
            table.Add(top + Math.Log(sum));
            table.Add(slope / sum * _step);
        }
        return [.. table];
    }
}

/// <summary>One course that a life may take.</summary>
/// <param name="Weight">Its chance for a new unit.</param>
/// <param name="Shift">What it adds to the centre of ln T.</param>
/// <param name="Tau">Its scale of ln T.</param>
/// <param name="AgeFactor">A unit that is still to take it lasts at least so many times its age now; 1 where its age says nothing more.</param>
public readonly record struct LifeBranch(double Weight, double Shift, double Tau, double AgeFactor = 1);
