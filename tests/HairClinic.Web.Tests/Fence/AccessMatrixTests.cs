using System.Globalization;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Layout;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>
/// Every fenced table, every role, rows near and far, every deed: tried with raw SQL as the program's own role and held against
/// access-matrix.csv, which is written by hand. A table that is not in it fails.
/// </summary>
public sealed class AccessMatrixTests(PgServer server)
{
    private static readonly string[] Actors = ["Owner", "Manager", "FrontDesk", "Stylist", "Trainee", "Client", "Job", "Nobody"];

    // Whose rows: the actor's own client, another of the same salon, one of another salon that let this one in, one of another salon,
    // one of another practice.
    private static readonly string[] Places = ["own", "neighbour", "guest", "elsewhere", "abroad"];

    // Changes that fewer may make than the rest of the row allows: what is set, and to what of the actor's own or another's.
    private static readonly (string Name, string Sql)[] HomeOnly =
    [
        ("clients.erased_at", "update clients set erased_at = now() where id = $1"),
        ("clients.home_salon_id", "update clients set home_salon_id = '{0}' where id = $1"),
        ("clients.left_on", "update clients set left_on = '2027-01-01' where id = $1"),
        ("clients.merged_into_id", "update clients set merged_into_id = '{1}' where id = $1"),
        ("life_events.client_id", "update life_events set client_id = '{1}' where id = $1"),
    ];

    // Tables whose rows belong to whoever wrote them.
    private static readonly Dictionary<string, string> Writer = new()
    {
        ["drafts"] = "person_id",
        ["sealed_drafts"] = "person_id",
        ["access_notes"] = "actor_id",
        ["write_keys"] = "actor_id",
        ["work_items"] = "actor_id",
    };

    [Fact]
    public async Task Every_cell_is_as_the_matrix_says()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var migrator = await OpenAsync(server.Connections.Migrator!);
        var samples = new SampleRows(migrator);
        await samples.LearnAsync(cancellation);
        var worlds = await LayAsync();

        var found = new List<string>();
        foreach (var table in samples.Tables)
        {
            foreach (var place in Places)
            {
                var cells = new List<string>();
                foreach (var actor in Actors)
                    cells.Add(await CellAsync(samples, migrator, table, worlds, place, actor, cancellation));
                found.Add($"{table},{place},{string.Join(',', cells)}");
            }
        }
        foreach (var (name, sql) in HomeOnly)
        {
            foreach (var place in Places)
            {
                var cells = new List<string>();
                foreach (var actor in Actors)
                    cells.Add(await ChangeAsync(samples, name, sql, worlds, place, actor, cancellation));
                found.Add($"{name},{place},{string.Join(',', cells)}");
            }
        }

        var path = Path.Combine(SourceTree.WebTests, "Fence", "access-matrix.csv");
        var wanted = (await File.ReadAllLinesAsync(path, cancellation)).Where(l => !l.StartsWith('#') && l.Length > 0).Skip(1).ToList();
        var differences = wanted
            .Except(found)
            .Select(l => "said  " + l)
            .Concat(found.Except(wanted).Select(l => "is    " + l))
            .Order()
            .ToList();
        if (differences.Count > 0)
            Assert.Fail("\n" + string.Join("\n", differences));
    }

    /// <param name="Second">Another client of the actors' own salon.</param>
    private sealed record Laid(Dictionary<string, SampleRows.World> Worlds, Dictionary<string, Actor?> Actors, Guid Second);

    private async Task<Laid> LayAsync()
    {
        Salon ours = null!,
            theirs = null!;
        Client own = null!,
            neighbour = null!,
            second = null!,
            guest = null!,
            elsewhere = null!;
        Person trainee = null!;
        ClientSignIn signIn = null!;
        Person[] bystanders = [];
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice under test");
                ours = scene.OpenSalon("Ours", "Europe/London", "GBP", chairs: 2);
                theirs = scene.OpenSalon("Theirs", "Europe/London", "GBP", chairs: 2);
                foreach (var role in Enum.GetValues<StaffRole>())
                    scene.Hire(role.ToString(), role, ours);
                trainee = scene.People.Single(p => p.Role == StaffRole.Trainee);
                bystanders =
                [
                    scene.Hire("A", StaffRole.FrontDesk),
                    scene.Hire("B", StaffRole.FrontDesk),
                    scene.Hire("C", StaffRole.FrontDesk),
                    scene.Hire("D", StaffRole.FrontDesk),
                ];
                own = scene.AddClient("C-1", "Own One", ours, email: "own@example.test");
                scene.Db.ClientSignIns.Add(signIn = new ClientSignIn(Guid.NewGuid(), own.Id, "own@example.test", scene.Now));
                neighbour = scene.AddClient("C-2", "Neighbour Two", ours);
                elsewhere = scene.AddClient("C-3", "Elsewhere Three", theirs);
                guest = scene.AddClient("C-4", "Guest Four", theirs);
                second = scene.AddClient("C-5", "Second Five", ours);
                var until = scene.Now + Duration.FromDays(1);
                scene.Db.ClientGrants.Add(
                    new ClientGrant(
                        Guid.CreateVersion7(),
                        guest.Id,
                        ours.Id,
                        scene.Now - Duration.FromDays(1),
                        until,
                        trainee.Id,
                        "Holiday"
                    )
                );
                scene.Book(own, scene.Services[0], scene.Chairs[0], trainee, scene.Now + Duration.FromDays(1));
            }
        );
        Client stranger = null!;
        Person other = null!;
        Salon abroad = null!;
        await using var foreign = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Another practice");
                abroad = scene.OpenSalon("Abroad", "Europe/Madrid", "EUR", chairs: 1);
                other = scene.Hire("Somebody", StaffRole.Stylist);
                stranger = scene.AddClient("X-1", "Stranger", abroad);
            }
        );
        var people = await clinic.ReadAsync(db => db.People.ToListAsync(TestContext.Current.CancellationToken));
        return new Laid(
            new()
            {
                ["own"] = new(clinic.PracticeId, own.Id, ours.Id, bystanders[0].Id),
                ["neighbour"] = new(clinic.PracticeId, neighbour.Id, ours.Id, bystanders[1].Id),
                ["guest"] = new(clinic.PracticeId, guest.Id, ours.Id, bystanders[3].Id),
                ["elsewhere"] = new(clinic.PracticeId, elsewhere.Id, theirs.Id, bystanders[2].Id),
                ["abroad"] = new(foreign.PracticeId, stranger.Id, abroad.Id, other.Id),
            },
            Actors.ToDictionary(
                a => a,
                a =>
                    a switch
                    {
                        "Client" => new ClientActor(clinic.PracticeId, own.Id, signIn.Id),
                        "Job" => clinic.Job,
                        "Nobody" => (Actor?)null,
                        _ => clinic.Acting(people.Single(p => p.Name == a), ours),
                    }
            ),
            second.Id
        );
    }

    private async Task<string> CellAsync(
        SampleRows samples,
        NpgsqlConnection migrator,
        string table,
        Laid laid,
        string place,
        string actor,
        CancellationToken cancellation
    )
    {
        var (world, acting) = (laid.Worlds[place], laid.Actors[actor]);
        var id = await samples.MadeAsync(table, world, cancellation);
        var row = await samples.RowAsync(table, world, cancellation);
        // What only its writer reads again is the actor's own in "own", somebody else's anywhere else.
        if (Writer.TryGetValue(table, out var writer))
        {
            var by =
                place == "own" && (acting is PersonActor || acting is ClientActor && writer == "actor_id")
                    ? acting.Id!.Value
                    : world.Person;
            var written = await samples.RowAsync(table, world, cancellation);
            written[writer] = by;
            await SampleRows.InsertAsync(migrator, table, written, cancellation);
            id = written["id"]!.GetValue<Guid>();
            row[writer] = by;
        }
        await using var program = await OpenAsync(server.Connections.Program);
        await using var transaction = await program.BeginTransactionAsync(cancellation);
        if (acting is not null)
            await ActAsync(program, acting, cancellation);
        var cell = "";
        cell += await DoesAsync($"select 1 from {table} where id = $1", id) ? "S" : "";
        cell += await InsertsAsync() ? "I" : "";
        cell += await DoesAsync($"update {table} set practice_id = practice_id where id = $1", id) ? "U" : "";
        cell += await DoesAsync($"delete from {table} where id = $1", id) ? "D" : "";
        return cell.Length == 0 ? "-" : cell;

        async Task<bool> DoesAsync(string sql, Guid subject)
        {
            await transaction.SaveAsync("before", cancellation);
            try
            {
                await using var command = new NpgsqlCommand(sql, program) { Parameters = { new() { Value = subject } } };
                if (sql.StartsWith("select", StringComparison.Ordinal))
                    return await command.ExecuteScalarAsync(cancellation) is not null;
                return await command.ExecuteNonQueryAsync(cancellation) > 0;
            }
            catch (PostgresException e)
            {
                return Allowed(e);
            }
            finally
            {
                await transaction.RollbackAsync("before", cancellation);
            }
        }

        async Task<bool> InsertsAsync()
        {
            await transaction.SaveAsync("before", cancellation);
            try
            {
                await SampleRows.InsertAsync(program, table, row, cancellation);
                return true;
            }
            catch (PostgresException e)
            {
                return Allowed(e);
            }
            finally
            {
                await transaction.RollbackAsync("before", cancellation);
            }
        }

        // Row security speaks before keys and checks do: whatever they say, the fence had let it through.
        bool Allowed(PostgresException e) =>
            e.SqlState == PostgresErrorCodes.InsufficientPrivilege ? false
            : e.SqlState.StartsWith("23", StringComparison.Ordinal) ? true
            : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{table} {place} {actor}: {e.Message}"), e);
    }

    private async Task<string> ChangeAsync(
        SampleRows samples,
        string name,
        string sql,
        Laid laid,
        string place,
        string actor,
        CancellationToken cancellation
    )
    {
        var world = laid.Worlds[place];
        // Whoever is at home would send them away; whoever is not would take them.
        var home = laid.Worlds[place is "guest" or "elsewhere" ? "own" : "elsewhere"].Salon;
        var id = await samples.MadeAsync(name[..name.IndexOf('.', StringComparison.Ordinal)], world, cancellation);
        await using var program = await OpenAsync(server.Connections.Program);
        await using var transaction = await program.BeginTransactionAsync(cancellation);
        if (laid.Actors[actor] is { } acting)
            await ActAsync(program, acting, cancellation);
        await using var change = new NpgsqlCommand(string.Format(CultureInfo.InvariantCulture, sql, home, laid.Second), program)
        {
            Parameters = { new() { Value = id } },
        };
        try
        {
            return await change.ExecuteNonQueryAsync(cancellation) > 0 ? "U" : "-";
        }
        catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            return "-";
        }
    }

    internal static async Task ActAsync(NpgsqlConnection connection, Actor actor, CancellationToken cancellation)
    {
        await using var act = new NpgsqlCommand(ActorStatement.Sql, connection);
        ActorStatement.Fill(act.Parameters, actor, TestClinic.UsualNow);
        await act.ExecuteNonQueryAsync(cancellation);
    }

    private static async Task<NpgsqlConnection> OpenAsync(string connectionString)
    {
        var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        return connection;
    }
}
