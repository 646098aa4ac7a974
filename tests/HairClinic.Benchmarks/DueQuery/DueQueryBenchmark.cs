using HairClinic.EmbeddedPostgres;
using HairClinic.Web;
using HairClinic.Web.Data;
using HairClinic.Web.Features.Wear;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Npgsql;

namespace HairClinic.Benchmarks.DueQuery;

/// <summary>The due list of a practice of a million clients and of one of a hundred, beside SQL written by hand for the same rows, with row security and without; <c>--clients</c> and <c>--rounds</c> for fewer.</summary>
internal static class DueQueryBenchmark
{
    private const double Goal = 1.5;
    private const int ClosingDays = 5;
    private const string Preparing = ";Max Auto Prepare=50;Auto Prepare Min Usages=2";

    public static async Task RunAsync(Report report)
    {
        var folder = Path.Combine(Path.GetTempPath(), $"hairclinic-benchmark-{Guid.NewGuid():N}");
        try
        {
            await using var server = await EmbeddedServer.StartAsync(new(folder) { Durable = false }, NullLogger.Instance);
            await using var services = Services(DatabaseConnectionStrings.FromEmbeddedServer(server));
            var prepared = DatabaseConnectionStrings.FromEmbeddedServer(server) with
            {
                Program = DatabaseConnectionStrings.FromEmbeddedServer(server).Program + Preparing,
                Migrator = DatabaseConnectionStrings.FromEmbeddedServer(server).Migrator + Preparing,
            };
            await using var preparing = Services(prepared);
            await preparing.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
            await services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
            var today = SystemClock.Instance.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb["Europe/London"]).Date;
            var administrator = new NpgsqlConnectionStringBuilder(server.Administrator) { Database = "hairclinic" }.ConnectionString;
            report.Say($"due-query: PostgreSQL {server.Binaries.Major}, median (least – most) ms; row security on unless said");
            foreach (var clients in new[] { 100, report.Option("clients", 1_000_000) })
            {
                var book = await LargeBook.LayAsync(services, administrator, clients, today);
                report.Say();
                report.Say($"{book.Clients:N0} clients, each with a unit bonded");
                await CompareAsync(report, DatabaseConnectionStrings.FromEmbeddedServer(server), services, book, today);
                report.Say("  the same with statements that the driver keeps prepared on both sides:");
                await CompareAsync(report, prepared, preparing, book, today);
            }
        }
        finally
        {
            if (Directory.Exists(folder))
                Directory.Delete(folder, recursive: true);
        }
    }

    private static ServiceProvider Services(DatabaseConnectionStrings connections)
    {
        var settings = new Dictionary<string, string?>
        {
            ["ConnectionStrings:Program"] = connections.Program,
            ["ConnectionStrings:Migrator"] = connections.Migrator,
        };
        return new ServiceCollection()
            .AddSingleton<IConfiguration>(new ConfigurationBuilder().AddInMemoryCollection(settings).Build())
            .AddLogging()
            .AddClinic()
            .BuildServiceProvider();
    }

    private static async Task CompareAsync(
        Report report,
        DatabaseConnectionStrings connections,
        ServiceProvider services,
        LargeBook book,
        LocalDate today
    )
    {
        await using var program = NpgsqlDataSource.Create(connections.Program);
        await using var migrator = NpgsqlDataSource.Create(connections.Migrator!);
        var bare = new BareDue(program, book, today);
        var unfenced = new BareDue(migrator, book, today);
        var rounds = report.Option("rounds", 31);
        // The first page is held against the same without row security: the fence may not cost half of it.
        await LineAsync(
            "first page and counts",
            fenced: true,
            rounds,
            () => SliceAsync(services, book),
            bare.OpenPageAsync,
            unfenced.OpenPageAsync
        );
        await LineAsync(
            $"all closing within {ClosingDays} days",
            fenced: false,
            Math.Min(9, rounds),
            () => ClosingAsync(services, book, today),
            () => bare.ClosingAsync(ClosingDays),
            () => unfenced.ClosingAsync(ClosingDays)
        );
        var page = await Rounds.TimeAsync(rounds, bare.PageOnlyAsync, unfenced.PageOnlyAsync);
        report.Say($"  the page without its counts: bare {Told(page[0])}; bare without row security {Told(page[1])}");

        async Task LineAsync(string what, bool fenced, int rounds, Func<Task> ours, Func<Task> theirs, Func<Task> open)
        {
            var times = await Rounds.TimeAsync(rounds, ours, theirs, open);
            var ratio = Rounds.Median(times[0]) / Rounds.Median(times[1]);
            var fence = Rounds.Median(times[0]) / Rounds.Median(times[2]);
            report.Say($"  {what}: program {Told(times[0])}; bare SQL {Told(times[1])}; bare without row security {Told(times[2])}");
            report.Say(
                $"  ratio {ratio:F2}, against no row security {fence:F2}; goal {Goal}: {((fenced ? fence : ratio) <= Goal ? "met" : "not met")}"
            );
        }
    }

    private static async Task SliceAsync(ServiceProvider services, LargeBook book) =>
        await services
            .GetRequiredService<PracticeJobRunner>()
            .RunAsAsync(
                book.Desk,
                scope => scope.GetRequiredService<Due>().OpenAsync(new(DuePart.All, AllSalons: false, After: null), CancellationToken.None)
            );

    private static async Task ClosingAsync(ServiceProvider services, LargeBook book, LocalDate today)
    {
        var until = today.PlusDays(ClosingDays);
        await services
            .GetRequiredService<PracticeJobRunner>()
            .RunAsAsync(
                book.Desk,
                async scope =>
                {
                    await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
                    return await db
                        .Bonds.Where(b => b.RemovedOn == null && b.ClosesOn >= today && b.ClosesOn < until)
                        .OrderBy(b => b.ClosesOn)
                        .ThenBy(b => b.Id)
                        .Select(b => new
                        {
                            b.Id,
                            b.ClientId,
                            b.HairSystemId,
                            b.AppliedOn,
                            b.OpensOn,
                            b.DueOn,
                            b.ClosesOn,
                        })
                        .ToListAsync();
                }
            );
    }

    private static string Told(IReadOnlyList<double> times) => $"{Rounds.Median(times):F2} ({times.Min():F2} – {times.Max():F2})";
}
