namespace HairClinic.Domain.LoadAhead;

/// <summary>Wash-and-styles of a client by rhythm, less those that are done with a rebond.</summary>
public static class WashDays
{
    /// <summary>A wash within so many days of a rebond is one trip with it.</summary>
    public const int MergedWithin = 3;

    /// <param name="nextIn">Days from today until the next by rhythm.</param>
    /// <param name="everyDays">7 or 14, or what the client likes.</param>
    /// <param name="rebonds">Expected rebonds a day.</param>
    public static void Expect(int nextIn, int everyDays, ReadOnlySpan<double> rebonds, Span<double> perDay)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(everyDays, 1);
        perDay.Clear();
        for (var day = Math.Max(0, nextIn); day < perDay.Length; day += everyDays)
        {
            var near = 0.0;
            for (var other = Math.Max(0, day - MergedWithin); other <= Math.Min(perDay.Length - 1, day + MergedWithin); other++)
                near += rebonds[other];
            perDay[day] = Math.Max(0, 1 - near);
        }
    }
}
