using System.Text;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Privacy;
using HairClinic.Web.Tests.EmbeddedPostgres;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;
using Npgsql;

namespace HairClinic.Web.Tests.Privacy;

/// <summary>The database's own files, read byte by byte as whoever carries the disk away would.</summary>
public sealed class ErasureVacuumTests(PgServer server)
{
    private static readonly string[] Telling =
    [
        "Isolde",
        "Ravenshore",
        "ravenshore",
        "isolde.r@example.test",
        "441632960091",
        "likes the window seat",
    ];

    // Three in the morning in London.
    private static readonly Instant Night = Instant.FromUtc(2027, 2, 3, 3, 0);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_the_night_no_file_of_the_database_holds_what_was_erased()
    {
        var clock = new FakeClock(Night - Duration.FromHours(9));
        await using var site = await EmptySite.OpenAsync(server, clock: clock);
        var database = site.Services.GetRequiredService<DatabaseLifetime>();
        var administrator = new NpgsqlConnectionStringBuilder(server.Administrator)
        {
            Database = new NpgsqlConnectionStringBuilder(database.Connections.Migrator!).Database,
        }.ConnectionString;
        var erased = site.Services.GetRequiredService<ErasureVacuum>();
        var (practice, client) = await LayAsync(site, clock);
        // The planner's samples hold names, too.
        await Sql.AskAsync(administrator, "analyze");

        await EraseAsync(site, practice, client);
        Assert.NotEmpty(await FoundAsync(administrator));

        Assert.False(await erased.VacuumIfDueAsync(Cancel));
        clock.Reset(Night);
        Assert.True(await SweptAsync(erased));
        Assert.Empty(await FoundAsync(administrator));
        Assert.False(await erased.VacuumIfDueAsync(Cancel));
    }

    [Fact]
    public async Task Where_the_machine_is_off_at_night_it_is_done_a_day_later()
    {
        var erasedAt = Instant.FromUtc(2027, 2, 3, 10, 0);
        var clock = new FakeClock(erasedAt);
        await using var site = await EmptySite.OpenAsync(server, clock: clock);
        var erased = site.Services.GetRequiredService<ErasureVacuum>();
        var (practice, client) = await LayAsync(site, clock);
        await EraseAsync(site, practice, client);

        clock.Reset(erasedAt + Duration.FromHours(23));
        Assert.False(await erased.VacuumIfDueAsync(Cancel));
        clock.Reset(erasedAt + Duration.FromHours(25));
        Assert.True(await SweptAsync(erased));
    }

    // Whoever reads here while another database of the server writes is taken to see what was before that.
    [Theory]
    [InlineData(false, "select count(*) from clients")]
    [InlineData(true, "select pg_current_xact_id()")]
    public async Task While_somebody_may_still_see_what_was_erased_it_is_left_for_the_next_time(bool elsewhere, string what)
    {
        var clock = new FakeClock(Night - Duration.FromHours(9));
        await using var site = await EmptySite.OpenAsync(server, clock: clock);
        var erased = site.Services.GetRequiredService<ErasureVacuum>();
        var (practice, client) = await LayAsync(site, clock);
        await EraseAsync(site, practice, client);
        clock.Reset(Night);

        var here = site.Services.GetRequiredService<DatabaseLifetime>().Connections.Migrator;
        await using (var other = new NpgsqlConnection(elsewhere ? server.Administrator : here))
        {
            await other.OpenAsync(Cancel);
            await using var transaction = await other.BeginTransactionAsync(Cancel);
            await using var asked = new NpgsqlCommand(what, other, transaction);
            await asked.ExecuteScalarAsync(Cancel);
            Assert.False(await erased.VacuumIfDueAsync(Cancel));
        }
        Assert.True(await SweptAsync(erased));
    }

    /// <summary>The site's own workers are at it every few seconds: as at night, it is tried again.</summary>
    private static async Task<bool> SweptAsync(ErasureVacuum erased)
    {
        for (var tries = 0; tries < 10; tries++)
            if (await erased.VacuumIfDueAsync(Cancel))
                return true;
        return false;
    }

    private static Task<(Guid Practice, Guid Client)> LayAsync(EmptySite site, FakeClock clock)
    {
        var practice = Guid.CreateVersion7();
        return JobAsync(
            site,
            practice,
            async (_, db) =>
            {
                db.Practices.Add(new PracticeRow(practice));
                var scene = new Scene(db, clock.GetCurrentInstant()).AddPractice("Practice under test");
                var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                foreach (var number in Enumerable.Range(2, 60))
                    scene.AddClient($"C-{number:0000}", $"Somebody Else {number}", salon, email: $"else{number}@example.test");
                await scene.SaveAsync();
                // Written last of all: nothing is pushed over what they leave in their pages.
                var client = scene.AddClient("C-0099", "Isolde Ravenshore", salon, "+441632960091", "isolde.r@example.test");
                client.SetBirthDateAndNote(new LocalDate(1969, 7, 1), "likes the window seat");
                await scene.SaveAsync();
                return (practice, client.Id);
            }
        );
    }

    private static Task<IReadOnlyDictionary<string, int>> EraseAsync(EmptySite site, Guid practice, Guid client) =>
        JobAsync(
            site,
            practice,
            (services, db) =>
                services.GetRequiredService<ClientEraser>().EraseAsync(db, Guid.CreateVersion7(), client, expected: null, Cancel)
        );

    private static Task<T> JobAsync<T>(EmptySite site, Guid practice, Func<IServiceProvider, ClinicDb, Task<T>> work) =>
        site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                practice,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(services, db);
                }
            );

    /// <summary>Which files of this database hold a telling text, once everything in memory is written out.</summary>
    private static async Task<IReadOnlyList<string>> FoundAsync(string administrator)
    {
        await Sql.AskAsync(administrator, "checkpoint");
        var data = (string)(await Sql.AskAsync(administrator, "select setting from pg_settings where name = 'data_directory'"))!;
        var folder = (string)
            (await Sql.AskAsync(administrator, "select 'base/' || oid from pg_database where datname = current_database()"))!;
        var found = new List<string>();
        foreach (var file in Directory.GetFiles(Path.Combine(data, folder)))
        {
            // The server throws its caches away when it likes: what is gone holds nothing.
            var bytes = Array.Empty<byte>();
            try
            {
                bytes = await File.ReadAllBytesAsync(file, Cancel);
            }
            catch (FileNotFoundException) { }
            found.AddRange(
                Telling.Where(t => bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(t)) >= 0).Select(t => $"{Path.GetFileName(file)}: {t}")
            );
        }
        return found;
    }
}
