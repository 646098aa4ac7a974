namespace HairClinic.Domain.Wear.Watch;

/// <summary>The tabular CUSUM: what has added up above and below a target, each side forgotten once it is back at 0.</summary>
/// <param name="Target">What values lie around while nothing has changed.</param>
/// <param name="Allowance">K: how far off the target a value may be before it adds anything; in the values' unit.</param>
/// <param name="Limit">H: a sum above it is a signal.</param>
public readonly record struct Cusum(double Target, double Allowance, double Limit)
{
    /// <summary>The sums after each value, in order; both begin at 0.</summary>
    public CusumPoint[] Path(ReadOnlySpan<double> values)
    {
        var path = new CusumPoint[values.Length];
        var (upper, lower) = (0.0, 0.0);
        for (var i = 0; i < values.Length; i++)
        {
            upper = Math.Max(0, upper + values[i] - Target - Allowance);
            lower = Math.Max(0, lower + Target - Allowance - values[i]);
            path[i] = new CusumPoint(upper, lower, upper > Limit || lower > Limit);
        }
        return path;
    }
}

/// <summary>Both sums after a value, and whether one of them is above the limit.</summary>
public readonly record struct CusumPoint(double Upper, double Lower, bool IsSignal);
