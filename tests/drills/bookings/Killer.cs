using System.Diagnostics;
using System.Globalization;

namespace HairClinic.BookingDrill;

/// <summary>Kills the site, the database and both in turn, amid the writing, and checks each time that it came back whole.</summary>
internal sealed class Killer(Clinic clinic, Site site, Checker checker, Report report)
{
    private readonly Random _random = new(20);

    public async Task<List<string>> KillAsync(int kills)
    {
        List<string> wrong = [];
        for (var kill = 1; kill <= kills; kill++)
        {
            await Task.Delay(TimeSpan.FromSeconds(2 + (3 * _random.NextDouble())));
            var what = (kill % 3) switch
            {
                1 => "site",
                2 => "database",
                _ => "both",
            };
            var watch = Stopwatch.StartNew();
            if (what != "site")
                KillDatabase();
            if (what != "database")
            {
                site.Kill();
                await DatabaseAnswersAsync();
                site.Start();
            }
            await DatabaseAnswersAsync();
            await site.ReadyAsync();
            report.Say(string.Create(CultureInfo.InvariantCulture, $"kill {kill}: {what}, ready after {watch.Elapsed.TotalSeconds:F1} s"));
            wrong.AddRange(await checker.NeverAsync());
        }
        return wrong;
    }

    // The server of the drill's own folder, and nothing else of that name.
    private void KillDatabase()
    {
        using var process = Process.GetProcessById(clinic.Postmaster);
        process.Kill();
        process.WaitForExit();
    }

    private async Task DatabaseAnswersAsync()
    {
        for (var tries = 0; tries < 600; tries++)
        {
            try
            {
                await using var command = clinic.Sql.CreateCommand("select 1");
                await command.ExecuteScalarAsync();
                return;
            }
            catch (Exception e) when (Faults.AreTransient(e))
            {
                await Task.Delay(100);
            }
        }
        throw new TimeoutException("The database did not answer within a minute.");
    }
}
