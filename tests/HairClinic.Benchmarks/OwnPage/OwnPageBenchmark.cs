using System.Globalization;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>A signed-in client's first page beside the barest page ASP.NET Core and Npgsql can make, under the same load in the same run.</summary>
internal static class OwnPageBenchmark
{
    private const double Goal = 0.6;
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
            var (ours, theirs) = (new List<double>(), new List<double>());
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
            var ratio = Rounds.Median(ours) / Rounds.Median(theirs);
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"own-page at {Connections} connections: {Rounds.Median(ours):F0} a second; bare page {Rounds.Median(theirs):F0}; ratio {ratio:F2}, goal {Goal}: {(ratio >= Goal ? "met" : "not met")}"
                )
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        async Task<double> OneAsync(string what, string address, Func<Work> work, IReadOnlyList<string>? cookies)
        {
            var before = work();
            var (perSecond, p99, clean) = await Wrk.RunAsync(address, Connections, Seconds, cookies);
            var (site, database) = work() - before;
            var pages = perSecond * Seconds;
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {what}: {perSecond:F0} a second, p99 {p99}; processor time a page: site {site / pages:F3} ms, database {database / pages:F3} ms{(clean ? "" : ", with errors")}"
                )
            );
            return clean ? perSecond : 0;
        }
    }
}
