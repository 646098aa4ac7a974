using System.Globalization;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>A signed-in client's first page beside the barest page ASP.NET Core and Npgsql can make, under the same load in the same run.</summary>
internal static class OwnPageBenchmark
{
    private const double Goal = 0.6;
    private const double TailGoal = 2;
    private const int Port = 5871;
    private const int Connections = 32;
    private const int Seconds = 6;
    private const int Turns = 5;

    public static async Task RunAsync(Report report)
    {
        NeedException.Unless("wrk", "wrk");
        var folder = Path.Combine(Path.GetTempPath(), $"hairclinic-own-{Guid.NewGuid():N}"[..24]);
        Directory.CreateDirectory(folder);
        File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        try
        {
            await using var bare = await BareSite.OpenAsync(folder, Port);
            await using var own = await OwnSite.OpenAsync(Path.Combine(folder, "own"), Port + 1, clients: 400);
            var page = own.Address + "/my-hair";
            var (ours, theirs) = (new List<(double PerSecond, double P99)>(), new List<(double PerSecond, double P99)>());
            await Wrk.RunAsync(page, Connections, Seconds, own.Cookies);
            if (bare is not null)
                await Wrk.RunAsync(bare.Page, Connections, Seconds);
            for (var turn = 0; turn < Turns; turn++)
            {
                ours.Add(await OneAsync("own page", page, () => own.Work, own.Cookies));
                if (bare is not null)
                    theirs.Add(await OneAsync("bare page", bare.Page, () => bare.Work, cookies: null));
            }
            if (bare is null)
            {
                report.Say("The baseline is not beside the repository: no ratio.");
                return;
            }
            var (speed, bareSpeed) = (Rounds.Median(ours.Select(o => o.PerSecond)), Rounds.Median(theirs.Select(t => t.PerSecond)));
            var (tail, bareTail) = (Rounds.Median(ours.Select(o => o.P99)), Rounds.Median(theirs.Select(t => t.P99)));
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"own-page at {Connections} connections: {speed:F0} a second; bare page {bareSpeed:F0}; ratio {speed / bareSpeed:F2}, goal {Goal}: {(speed >= Goal * bareSpeed ? "met" : "not met")}"
                )
            );
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"slowest hundredth: {tail:F1} ms; bare page {bareTail:F1}; ratio {tail / bareTail:F2}, at most {TailGoal}: {(tail <= TailGoal * bareTail ? "met" : "not met")}"
                )
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        async Task<(double PerSecond, double P99)> OneAsync(string what, string address, Func<Work> work, IReadOnlyList<string>? cookies)
        {
            var before = work();
            var (perSecond, p99, clean) = await Wrk.RunAsync(address, Connections, Seconds, cookies);
            var (site, database) = work() - before;
            var pages = perSecond * Seconds;
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {what}: {perSecond:F0} a second, p99 {p99:F1} ms; processor time a page: site {site / pages:F3} ms, database {database / pages:F3} ms{(clean ? "" : ", with errors")}"
                )
            );
            return (clean ? perSecond : 0, p99);
        }
    }
}
