using System.Diagnostics;

namespace HairClinic.Benchmarks;

/// <summary>Several ways of doing the same, timed turn by turn, so that a neighbour's load falls on all of them alike.</summary>
public static class Rounds
{
    /// <summary>By the wall clock.</summary>
    public static Task<IReadOnlyList<IReadOnlyList<double>>> TimeAsync(int rounds, params IReadOnlyList<Func<Task>> ways) =>
        TimeAsync(rounds, () => Stopwatch.GetElapsedTime(0), ways);

    /// <summary>By what the processor spent on this program: what computes alone is then measured fairly on a machine that others use.</summary>
    public static Task<IReadOnlyList<IReadOnlyList<double>>> ComputeAsync(int rounds, params IReadOnlyList<Func<Task>> ways) =>
        TimeAsync(rounds, () => Process.GetCurrentProcess().TotalProcessorTime, ways);

    /// <returns>For each way its times, one a round, in milliseconds.</returns>
    private static async Task<IReadOnlyList<IReadOnlyList<double>>> TimeAsync(
        int rounds,
        Func<TimeSpan> clock,
        IReadOnlyList<Func<Task>> ways
    )
    {
        foreach (var way in ways)
            await way();
        var times = ways.Select(_ => new List<double>()).ToList();
        for (var round = 0; round < rounds; round++)
        {
            for (var i = 0; i < ways.Count; i++)
            {
                var start = clock();
                await ways[i]();
                times[i].Add((clock() - start).TotalMilliseconds);
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
