using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.LoadAhead;

/// <summary>How often something that starts anew whenever it ends is expected to end, day by day.</summary>
public static class RenewalCalculator
{
    /// <summary>The expected number of ends on each day: m(d) = first(d) + Σ m(d − j)·again(j).</summary>
    /// <param name="first">P(the running one ends on that day), from today as 0.</param>
    /// <param name="again">P(one made on some day ends so many days later); nothing on 0.</param>
    public static void Expect(ReadOnlySpan<double> first, ReadOnlySpan<double> again, Span<double> perDay)
    {
        perDay.Clear();
        first[..Math.Min(first.Length, perDay.Length)].CopyTo(perDay);
        var longest = again.LastIndexOfAnyExcept(0.0);
        for (var day = 0; day < perDay.Length - 1; day++)
        {
            // What ends today starts again and spreads over the days on which it may end.
            var reach = Math.Min(longest, perDay.Length - 1 - day);
            if (reach > 0 && perDay[day] != 0)
                VectorSums.AddScaled(perDay[(day + 1)..], again.Slice(1, reach), perDay[day]);
        }
    }

    /// <summary>Mean and variance of the number of ends on the days of a stretch.</summary>
    /// <param name="afterOne">The expected ends on each day after one: <see cref="Expect"/> with the same distribution twice.</param>
    public static (double Mean, double Variance) MomentsWithin(
        ReadOnlySpan<double> perDay,
        ReadOnlySpan<double> afterOne,
        int from,
        int through
    )
    {
        var (mean, pairs) = (0.0, 0.0);
        for (var day = from; day <= through; day++)
        {
            mean += perDay[day];
            // E[N(N − 1)]: an end on one day and another on a later one.
            for (var later = day + 1; later <= through && later - day < afterOne.Length; later++)
                pairs += 2 * perDay[day] * afterOne[later - day];
        }
        return (mean, Math.Max(0, pairs + mean - mean * mean));
    }
}
