using System.Diagnostics;
using System.Globalization;
using HairClinic.Domain.Visits;

namespace HairClinic.BookingDrill;

/// <summary>Opens salon and site, lets the writers write, kills what it is to kill, checks, and says how it went.</summary>
internal static class Drill
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    public static async Task<bool> RunAsync(Settings settings, Report report)
    {
        var folder = Path.Combine(Path.GetTempPath(), $"hairclinic-drill-{Guid.NewGuid():N}"[..26]);
        Directory.CreateDirectory(folder);
        // PostgreSQL runs as another user where the drill is root's.
        File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        try
        {
            await using var clinic = await Clinic.OpenAsync(folder);
            using var site = new Site(clinic, report, settings.Port);
            site.Start();
            await site.ReadyAsync();
            return await RunAsync(settings, report, clinic, site);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<bool> RunAsync(Settings settings, Report report, Clinic clinic, Site site)
    {
        var (ledger, looker) = (new Ledger(), new Looker(clinic));
        var checker = new Checker(clinic, ledger);
        report.Say(
            $"{settings.Writers} writers, {(settings.Kills > 0 ? $"{settings.Kills} kills" : $"{settings.Seconds} s")}, {2 * Clinic.Of} clients, {Clinic.Chairs} chairs, {Clinic.Stylists} stylists"
        );
        using var stop = new CancellationTokenSource();
        using var giveUp = new CancellationTokenSource();
        var writers = Enumerable.Range(0, settings.Writers).Select(i => Task.Run(() => WriteAsync(i))).ToList();
        List<string> wrong = [];
        var watch = Stopwatch.StartNew();
        if (settings.Kills > 0)
            wrong.AddRange(await new Killer(clinic, site, checker, report).KillAsync(settings.Kills));
        else
        {
            while (watch.Elapsed < TimeSpan.FromSeconds(settings.Seconds))
            {
                await Task.Delay(TimeSpan.FromSeconds(2));
                wrong.AddRange(await checker.NeverAsync());
            }
        }
        var wrote = watch.Elapsed;
        await stop.CancelAsync();
        giveUp.CancelAfter(Patience);
        await Task.WhenAll(writers);

        wrong.AddRange(await checker.NeverAsync());
        wrong.AddRange(await checker.AcknowledgedAsync());
        wrong.AddRange(ledger.Wrong);
        report.Say(ledger.Counts);
        var times = ledger.Milliseconds.Order().ToList();
        report.Say(
            string.Create(
                CultureInfo.InvariantCulture,
                $"submissions {times.Count} in {wrote.TotalSeconds:F0} s; p50 {times[times.Count / 2]:F0} ms, p99 {times[times.Count * 99 / 100]:F0} ms, slowest {times[^1]:F0} ms"
            )
        );
        foreach (var what in wrong.CountBy(w => w).Take(20))
            report.Say($"  {what.Value} × {what.Key}");
        var verdict =
            $"{ledger.Acknowledged.Count} acknowledged writes, {wrong.Count} faults; most visits ahead booked alone {await checker.MostAheadAsync()} of {SelfBookingRule.MostAhead}";
        report.Say($"{(wrong.Count == 0 && !ledger.Acknowledged.IsEmpty ? "PASS" : "FAIL")}: {verdict}");
        return wrong.Count == 0 && !ledger.Acknowledged.IsEmpty;

        async Task WriteAsync(int number)
        {
            var writer = new Writer(clinic, ledger, looker, number, giveUp.Token);
            using var browser = new HttpWriter(clinic, ledger, looker, site.Address, number, giveUp.Token);
            while (!stop.IsCancellationRequested)
                await (
                    (number % 8) switch
                    {
                        0 or 1 or 2 => writer.DeskAsync(),
                        3 or 4 or 5 => writer.OwnAsync(),
                        6 => writer.LiftAsync(),
                        _ => browser.WriteAsync(),
                    }
                );
        }
    }
}
