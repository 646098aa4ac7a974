using System.Diagnostics;
using HairClinic.Benchmarks.Pages;
using HairClinic.Web.Data;
using HairClinic.Web.Demo;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;

namespace HairClinic.Benchmarks.Nightly;

/// <summary>
/// The nightly run over the demo practice's book, so many times over (<c>--clients 30000</c>): both fits, what is watched and asked about,
/// leads, every client's plan and what pages show of all. <c>--rounds</c> says how often, the first being the one that has nothing to
/// build on. Held against the same run of an earlier version on the same machine.
/// </summary>
internal static class NightlyBenchmark
{
    public static Task RunAsync(Report report) =>
        ClinicOfItsOwn.UseAsync(
            "nightly",
            async (app, server) =>
            {
                var practice = (await app.Services.GetRequiredService<DemoSeeder>().FillAsync(CancellationToken.None))!.PracticeId;
                var administrator = new NpgsqlConnectionStringBuilder(server.Administrator) { Database = "hairclinic" }.ConnectionString;
                var clients = await CopiedBook.MultiplyAsync(administrator, practice, report.Option("clients", 3000));
                var jobs = app.Services.GetRequiredService<PracticeJobRunner>();
                for (var round = 1; round <= report.Option("rounds", 3); round++)
                {
                    var (watch, before) = (Stopwatch.StartNew(), Process.GetCurrentProcess().TotalProcessorTime);
                    await jobs.RunJobAsync(practice, "benchmark", CalculateAsync);
                    var used = Process.GetCurrentProcess().TotalProcessorTime - before;
                    report.Say(
                        $"{clients:N0} clients, night {round}: {watch.Elapsed.TotalSeconds:F1} s by the wall clock, {used.TotalSeconds:F1} s of processor time beside the database's"
                    );
                }
            }
        );

    /// <summary>A recalculation as at night.</summary>
    internal static async Task<bool> CalculateAsync(IServiceProvider scope)
    {
        await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
        await RecalculationQueue.RequestAsync(db, null, SystemClock.Instance.GetCurrentInstant(), CancellationToken.None);
        return await scope.GetRequiredService<RecalculationRunner>().RunAsync(CancellationToken.None);
    }
}
