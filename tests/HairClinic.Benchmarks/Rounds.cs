using System.Diagnostics;

namespace HairClinic.Benchmarks;

/// <summary>Several ways of doing the same, timed turn by turn, so that a neighbour's load falls on all of them alike.</summary>
public static class Rounds
{
    /// <returns>For each way its times, one a round, in milliseconds.</returns>
    public static async Task<IReadOnlyList<IReadOnlyList<double>>> TimeAsync(int rounds, params IReadOnlyList<Func<Task>> ways)
    {
        foreach (var way in ways)
            await way();
        var times = ways.Select(_ => new List<double>()).ToList();
        for (var round = 0; round < rounds; round++)
        {
            for (var i = 0; i < ways.Count; i++)
            {
                var start = Stopwatch.GetTimestamp();
                await ways[i]();
                times[i].Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }
        return times;
    }

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        var middle = sorted.Count / 2;
        return sorted.Count % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
