using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using NodaTime.Testing;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>
/// Asks at random, as anybody, for anything, and holds every row that comes back, and every change that is let through or refused,
/// against what was laid; the seed is fixed.
/// </summary>
public sealed class RandomRequestsTests(PgServer server)
{
    private const int Requests = 10_000;

    /// <summary>Tables and the column that says whose client a row is.</summary>
    private static readonly (string Table, string Client)[] Asked =
    [
        ("clients", "id"),
        ("bonds", "client_id"),
        ("hair_systems", "client_id"),
        ("visits", "client_id"),
        ("life_events", "client_id"),
        ("care_facts", "client_id"),
        ("contact_notes", "client_id"),
        ("client_grants", "client_id"),
        ("find_words", "subject_id"),
    ];

    // Wrong queries, of the kinds people write: no condition, the wrong column, everything, a join that multiplies.
    private static readonly string[] Conditions =
    [
        "true",
        "t.id = t.id",
        "t.practice_id is not null or true",
        "{0} = any ($1)",
        "{0} <> all ($1)",
        "exists (select from clients c where c.id = {0})",
        "{0} in (select client_id from visits)",
        "{0} in (select id from clients order by random() limit 5)",
    ];

    [Fact]
    public async Task Ten_thousand_random_requests_read_no_row_of_anothers_and_change_only_what_is_theirs_to_change()
    {
        var cancellation = TestContext.Current.CancellationToken;
        var random = new Random(20270203);
        var world = await RandomWorld.LayAsync(server, random);
        await using var pool = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(server.Connections.Program) { MaxPoolSize = 4, ApplicationName = "random" }.ConnectionString
        );
        var outcomes = new Dictionary<(string, bool), int>();

        for (var i = 0; i < Requests; i++)
        {
            var asking = world.Actors[random.Next(world.Actors.Count)];
            await using var connection = await pool.OpenConnectionAsync(cancellation);
            await AccessMatrixTests.ActAsync(connection, asking.Actor, cancellation);
            if (i % 3 == 0)
            {
                var change = RandomChange.Make(world, asking, random);
                var done = await DoneAsync(connection, change.Sql, cancellation);
                if (done != change.May)
                    Assert.Fail($"Request {i}: {asking.Actor} {(done ? "did" : "could not")}: {change.Sql}");
                outcomes[(change.What, done)] = outcomes.GetValueOrDefault((change.What, done)) + 1;
            }
            else
                await ReadAsync(connection, world, asking, random, i, cancellation);
        }

        // Each kind of change was tried by somebody who may and by somebody who may not; only owners send a client away without a transfer.
        Assert.All(
            RandomChange.Kinds,
            k => Assert.All(new[] { true, false }, d => Assert.True(outcomes.GetValueOrDefault((k, d)) > 10, $"{k} {d}"))
        );
    }

    private static async Task ReadAsync(
        NpgsqlConnection connection,
        RandomWorld world,
        RandomWorld.Asking asking,
        Random random,
        int request,
        CancellationToken cancellation
    )
    {
        var (table, client) = Asked[random.Next(Asked.Length)];
        var condition = string.Format(null, Conditions[random.Next(Conditions.Length)], $"t.{client}");
        await using var ask = new NpgsqlCommand($"select t.practice_id, t.{client} from {table} t where {condition}", connection);
        if (condition.Contains("$1", StringComparison.Ordinal))
            ask.Parameters.Add(new() { Value = world.Everybody.OrderBy(_ => random.Next()).Take(3).ToArray() });
        await using var reader = await ask.ExecuteReaderAsync(cancellation);
        while (await reader.ReadAsync(cancellation))
        {
            Assert.Equal(asking.Actor.PracticeId, reader.GetGuid(0));
            // A salon keeps its own diary, whoever came.
            if (!asking.Allowed.Contains(reader.GetGuid(1)) && !(table == "visits" && asking.Hosted.Contains(reader.GetGuid(1))))
                Assert.Fail($"Request {request}: {asking.Actor} read {table} {reader.GetGuid(1)} where {condition}.");
        }
    }

    // Undone at once: each is tried on the same book.
    private static async Task<bool> DoneAsync(NpgsqlConnection connection, string sql, CancellationToken cancellation)
    {
        await using var transaction = await connection.BeginTransactionAsync(cancellation);
        await using var change = new NpgsqlCommand(sql, connection);
        try
        {
            return await change.ExecuteNonQueryAsync(cancellation) > 0;
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.InsufficientPrivilege or PostgresErrorCodes.ForeignKeyViolation)
        {
            // Refused, or it names somebody of the other practice.
            return false;
        }
    }

    [Fact]
    public async Task A_pool_shared_by_all_leaks_nobody_whatever_goes_wrong()
    {
        var world = await RandomWorld.LayAsync(server, new Random(7));
        var shared = new NpgsqlConnectionStringBuilder(DatabaseConnectionStrings.WithAutoPrepare(server.Connections.Program))
        {
            MaxPoolSize = 3,
            ApplicationName = "shared pool",
        };
        var options = ClinicDbOptions.For(shared.ConnectionString, clock: new FakeClock(TestClinic.UsualNow));
        await using var administrator = NpgsqlDataSource.Create(server.Administrator);
        var answered = 0;

        await Parallel.ForEachAsync(
            Enumerable.Range(0, 1_500),
            new ParallelOptions { MaxDegreeOfParallelism = 12, CancellationToken = TestContext.Current.CancellationToken },
            async (i, cancellation) =>
            {
                var random = new Random(i);
                var asking = world.Actors[random.Next(world.Actors.Count)];
                var (actor, allowed) = (asking.Actor, asking.Allowed);
                try
                {
                    await using var db = new ClinicDb(options, actor);
                    switch (random.Next(6))
                    {
                        case 0: // broken off in the middle
                            using (var soon = new CancellationTokenSource(TimeSpan.FromMilliseconds(random.Next(3))))
                                await Fault(db, "select pg_sleep(0.2)", soon.Token);
                            break;
                        case 1: // a transaction nobody ends
                            await db.Database.BeginTransactionAsync(cancellation);
                            break;
                        case 2: // an error in SQL
                            await Fault(db, "select 1 / 0", cancellation);
                            break;
                        case 3: // the server ends the connection
                            if (i % 20 == 3)
                            {
                                await using var kill = administrator.CreateCommand(
                                    "select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'shared pool' limit 1"
                                );
                                await kill.ExecuteNonQueryAsync(cancellation);
                            }
                            break;
                        default:
                            break;
                    }
                    var seen = await db.Clients.Select(c => new { c.PracticeId, c.Id }).ToListAsync(cancellation);
                    Assert.All(seen, s => Assert.True(s.PracticeId == actor.PracticeId && allowed.Contains(s.Id)));
                    // Nothing is missing either: an actor that was lost on the way would see nobody.
                    Assert.Equal(allowed.Count, seen.Count);
                    Interlocked.Increment(ref answered);
                }
                catch (Exception e) when (e is NpgsqlException or OperationCanceledException or InvalidOperationException)
                {
                    // The fault itself; what matters is whoever comes next.
                }
                await using var nobody = new ClinicDb(options, actor: null);
                try
                {
                    Assert.Equal(0, await nobody.Clients.IgnoreQueryFilters().CountAsync(cancellation));
                }
                catch (Exception e) when (e is NpgsqlException or InvalidOperationException)
                {
                    // Its connection was the one the server ended.
                }
            }
        );

        Assert.InRange(answered, 700, 1_500);
    }

    private static async Task Fault(ClinicDb db, string sql, CancellationToken cancellation)
    {
        try
        {
            await db.Database.ExecuteSqlRawAsync(sql, cancellation);
        }
        catch (Exception e) when (e is NpgsqlException or OperationCanceledException)
        {
            // As meant.
        }
    }
}
