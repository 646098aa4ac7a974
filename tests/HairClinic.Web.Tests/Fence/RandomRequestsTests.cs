using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>Asks at random, as anybody, for anything, and holds every row that comes back against what was laid; the seed is fixed.</summary>
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
    public async Task Ten_thousand_random_requests_return_no_row_of_anothers()
    {
        var cancellation = TestContext.Current.CancellationToken;
        var random = new Random(20270203);
        var world = await World.LayAsync(server, random);
        await using var pool = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(server.Connections.Program) { MaxPoolSize = 4, ApplicationName = "random" }.ConnectionString
        );

        for (var i = 0; i < Requests; i++)
        {
            var (actor, allowed, hosted) = world.Actors[random.Next(world.Actors.Count)];
            var (table, client) = Asked[random.Next(Asked.Length)];
            var condition = string.Format(null, Conditions[random.Next(Conditions.Length)], $"t.{client}");
            await using var connection = await pool.OpenConnectionAsync(cancellation);
            await AccessMatrixTests.ActAsync(connection, actor, cancellation);
            await using var ask = new NpgsqlCommand($"select t.practice_id, t.{client} from {table} t where {condition}", connection);
            if (condition.Contains("$1", StringComparison.Ordinal))
                ask.Parameters.Add(new() { Value = world.Everybody.OrderBy(_ => random.Next()).Take(3).ToArray() });
            await using var reader = await ask.ExecuteReaderAsync(cancellation);
            while (await reader.ReadAsync(cancellation))
            {
                Assert.Equal(actor.PracticeId, reader.GetGuid(0));
                // A salon keeps its own diary, whoever came.
                if (!allowed.Contains(reader.GetGuid(1)) && !(table == "visits" && hosted.Contains(reader.GetGuid(1))))
                    Assert.Fail($"Request {i}: {actor} read {table} {reader.GetGuid(1)} where {condition}.");
            }
        }
    }

    [Fact]
    public async Task A_pool_shared_by_all_leaks_nobody_whatever_goes_wrong()
    {
        var world = await World.LayAsync(server, new Random(7));
        var shared = new NpgsqlConnectionStringBuilder(ClinicConnections.Preparing(server.Connections.Program))
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
                var (actor, allowed, _) = world.Actors[random.Next(world.Actors.Count)];
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

    /// <summary>Two practices of three salons, with who may see whom worked out here from what was laid, not asked of the fence.</summary>
    private sealed record World(List<(Actor Actor, HashSet<Guid> Allowed, HashSet<Guid> Hosted)> Actors, List<Guid> Everybody)
    {
        public static async Task<World> LayAsync(PgServer server, Random random)
        {
            var world = new World([], []);
            for (var p = 0; p < 2; p++)
                await LayPracticeAsync(world, server, random);
            return world;
        }

        private static async Task LayPracticeAsync(World world, PgServer server, Random random)
        {
            List<Salon> salons = [];
            List<Client> clients = [];
            List<Person> people = [];
            var visits = new List<(Client Client, Salon Salon, Person Person, bool Recent)>();
            var granted = new List<(Client Client, Salon Salon)>();
            await using var clinic = await TestClinic.OpenAsync(
                server,
                scene =>
                {
                    scene.LayPractice("Practice");
                    for (var s = 0; s < 3; s++)
                        salons.Add(scene.OpenSalon($"Salon {s}", "Europe/London", "GBP", chairs: 1));
                    foreach (var role in Enum.GetValues<StaffRole>())
                    {
                        people.Add(scene.Hire($"{role} one", role, salons[0]));
                        people.Add(scene.Hire($"{role} two", role, salons[1], salons[2]));
                    }
                    for (var c = 0; c < 30; c++)
                        clients.Add(scene.Welcome($"C-{c}", $"Client {c}", salons[random.Next(3)]));
                    for (var v = 0; v < 25; v++)
                    {
                        var (client, salon) = (random.Next(30), random.Next(3));
                        var person = people[random.Next(people.Count)];
                        var recent = random.Next(2) == 0;
                        // One after another, so that no chair or hand is taken twice; what is long past grants nothing any more.
                        var at = scene.Now - Duration.FromDays(recent ? 5 : 200) - Duration.FromHours(3 * v);
                        scene.Book(clients[client], scene.Services[0], scene.Chairs[salon], person, at);
                        visits.Add((clients[client], salons[salon], person, recent));
                    }
                    for (var g = 0; g < 6; g++)
                    {
                        var (client, salon) = (clients[random.Next(30)], salons[random.Next(3)]);
                        var over = g % 3 == 0;
                        var (from, until) = over
                            ? (scene.Now - Duration.FromDays(20), scene.Now - Duration.FromDays(10))
                            : (scene.Now - Duration.FromDays(1), scene.Now + Duration.FromDays(10));
                        scene.Db.ClientGrants.Add(
                            new ClientGrant(Guid.CreateVersion7(), client.Id, salon.Id, from, until, people[0].Id, "Holiday")
                        );
                        if (!over)
                            granted.Add((client, salon));
                    }
                    foreach (var client in clients)
                        scene.Db.LifeEvents.Add(
                            new LifeEvent(
                                Guid.CreateVersion7(),
                                client.Id,
                                LifeEventKind.Other,
                                new(2027, 3, 1),
                                new(2027, 3, 2),
                                away: false
                            )
                        );
                }
            );
            world.Everybody.AddRange(clients.Select(c => c.Id));
            var all = clients.Select(c => c.Id).ToHashSet();
            foreach (var person in people)
            {
                Salon[] own = person.Name.EndsWith("one", StringComparison.Ordinal) ? [salons[0]] : [salons[1], salons[2]];
                HashSet<Guid> allowed = person.Role switch
                {
                    StaffRole.Owner => all,
                    StaffRole.Trainee => [.. visits.Where(v => v.Person == person && v.Recent).Select(v => v.Client.Id)],
                    _ =>
                    [
                        .. clients.Where(c => own.Any(s => s.Id == c.HomeSalonId)).Select(c => c.Id),
                        .. visits.Where(v => v.Recent && own.Contains(v.Salon)).Select(v => v.Client.Id),
                        .. granted.Where(g => own.Contains(g.Salon)).Select(g => g.Client.Id),
                    ],
                };
                var hosted =
                    person.Role == StaffRole.Trainee ? visits.Where(v => v.Person == person) : visits.Where(v => own.Contains(v.Salon));
                world.Actors.Add((clinic.Acting(person, own), allowed, [.. hosted.Select(v => v.Client.Id)]));
            }
            world.Actors.AddRange(
                clients
                    .Take(5)
                    .Select(c => ((Actor)new ClientActor(clinic.PracticeId, c.Id), new HashSet<Guid> { c.Id }, new HashSet<Guid>()))
            );
        }
    }
}
