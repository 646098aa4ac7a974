namespace HairClinic.Domain.LoadAhead;

/// <summary>What is expected of one week. Means add up exactly over clients and salons; so do variances of what is not shared.</summary>
public readonly record struct WeekLoad(
    double Rebonds,
    double Washes,
    double Fittings,
    double ChairMinutes,
    double HandsOnMinutes,
    double ChairVariance,
    double HandsOnVariance
)
{
    public static WeekLoad operator +(WeekLoad one, WeekLoad other) =>
        new(
            one.Rebonds + other.Rebonds,
            one.Washes + other.Washes,
            one.Fittings + other.Fittings,
            one.ChairMinutes + other.ChairMinutes,
            one.HandsOnMinutes + other.HandsOnMinutes,
            one.ChairVariance + other.ChairVariance,
            one.HandsOnVariance + other.HandsOnVariance
        );

    /// <summary>Mean and variance of so many visits of a kind.</summary>
    public static WeekLoad Of(VisitCount rebonds, VisitCount washes, VisitCount fittings, LoadMinutes each) =>
        new(
            rebonds.Mean,
            washes.Mean,
            fittings.Mean,
            rebonds.Mean * each.Rebond.Chair + washes.Mean * each.Wash.Chair + fittings.Mean * each.Fitting.Chair,
            rebonds.Mean * each.Rebond.HandsOn + washes.Mean * each.Wash.HandsOn + fittings.Mean * each.Fitting.HandsOn,
            Square(each.Rebond.Chair) * rebonds.Variance
                + Square(each.Wash.Chair) * washes.Variance
                + Square(each.Fitting.Chair) * fittings.Variance,
            Square(each.Rebond.HandsOn) * rebonds.Variance
                + Square(each.Wash.HandsOn) * washes.Variance
                + Square(each.Fitting.HandsOn) * fittings.Variance
        );

    private static double Square(double value) => value * value;
}
