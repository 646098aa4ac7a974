namespace HairClinic.Domain.Wear.Grades;

/// <summary>How likely a unit's grades are, for each life that it may have: what they say of x = ln T.</summary>
/// <remarks>Only its shape matters. Beyond the grid it stays as it is at its ends.</remarks>
public sealed class GradeCurve
{
    internal GradeCurve(GradeGrid grid, double[] values) => (Grid, Values) = (grid, values);

    internal GradeGrid Grid { get; }

    /// <summary>On the grid's places.</summary>
    internal double[] Values { get; }

    /// <summary>Between the grid's places by Lagrange's polynomial through six of them.</summary>
    public double At(double logDays)
    {
        var at = (logDays - Grid.Start) / GradeGrid.Step;
        if (!(at > 0))
            return Values[0];
        if (at >= Grid.Count - 1)
            return Values[^1];
        var whole = (int)at;
        var u = at - whole;
        // Lagrange's weights of −2, −1 … 3, from the products of the distances to both sides.
        var (a, b, c, d, e, f) = (u + 2, u + 1, u, u - 1, u - 2, u - 3);
        var (left, middle, right) = (a * b, c * d, e * f);
        return -middle * b * right / 120 * Value(whole - 2)
            + a * middle * right / 24 * Value(whole - 1)
            - left * d * right / 12 * Value(whole)
            + left * c * right / 12 * Value(whole + 1)
            - left * middle * f / 24 * Value(whole + 2)
            + left * middle * e / 120 * Value(whole + 3);
    }

    private double Value(int place) => Values[Math.Clamp(place, 0, Values.Length - 1)];
}
