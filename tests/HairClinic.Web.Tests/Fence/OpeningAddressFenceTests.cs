using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;
using HairClinic.Web.Tests.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using static HairClinic.Web.Tests.Features.MyHair.KeyScene;

namespace HairClinic.Web.Tests.Fence;

/// <summary>The rule on addresses, tried with raw SQL as the program's own role: it holds whatever a screen forgets.</summary>
public sealed class OpeningAddressFenceTests(PgServer server)
{
    private const string Mine = "my.private@example.test";

    /// <summary>What an address that is not confirmed reads, of its own client and of what everybody reads; the list is closed.</summary>
    private static readonly string[] ReadByDatesOnly =
    [
        "bond_products",
        "bonds",
        "calendar_feeds",
        "clearances",
        "client_preferences",
        "client_sign_ins",
        "clients",
        "visit_segments",
        "visits",
    ];

    private const string ConfirmIt =
        "update opening_addresses set confirmed_at = now(), confirmed_by = app_actor(), confirmed_how = 'InPerson' where email = $1 and ended_at is null";

    private readonly KeyScene _scene = new();

    [Fact]
    public async Task Nobody_confirms_what_they_entered_and_the_desk_confirms_nothing()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var (desk, manager) = (_scene.Desk(clinic), _scene.Of(clinic, StaffRole.Manager));
        await DoAsync(clinic, manager, $"update clients set email = '{Mine}' where code = 'Q-7719'");

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await RefusedAsync(clinic, manager, ConfirmIt, Mine));
        Assert.Equal(0, await DoAsync(clinic, desk, ConfirmIt, Mine));
        Assert.Equal(0, await DoAsync(clinic, _scene.Of(clinic, StaffRole.Trainee), ConfirmIt, Mine));
        Assert.Equal(1, await DoAsync(clinic, _scene.Of(clinic, StaffRole.Stylist), ConfirmIt, Mine));
    }

    [Fact]
    public async Task Whoever_was_only_let_in_confirms_nothing()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.LetInThereAsync(clinic);
        await DoAsync(clinic, _scene.Desk(clinic), $"update clients set email = '{Mine}' where code = 'Q-7719'");

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await RefusedAsync(clinic, _scene.StylistThere(clinic), ConfirmIt, Mine));
    }

    [Theory]
    [InlineData("update opening_addresses set entered_by = null where email = $1")]
    [InlineData("update opening_addresses set email = $1, client_id = (select id from clients where code = 'Q-7720')")]
    [InlineData(
        "update opening_addresses set confirmed_at = now(), confirmed_by = entered_by, confirmed_how = 'InPerson' where email = $1"
    )]
    [InlineData("update opening_addresses set confirmed_at = now(), confirmed_how = 'OldAddress' where email = $1")]
    [InlineData("update opening_addresses set confirmed_at = now(), confirmed_how = 'Before' where email = $1")]
    [InlineData(
        "update opening_addresses set confirmed_at = now(), confirmed_by = app_actor(), confirmed_how = 'OwnerAlone' where email = $1"
    )]
    [InlineData("update opening_addresses set link_hash = 'x', link_expires_at = 'infinity' where email = $1")]
    [InlineData("update opening_addresses set told_at = now() where email = $1")]
    [InlineData(
        "insert into opening_addresses (practice_id, id, client_id, email, entered_at) select practice_id, gen_random_uuid(), id, $1, now() from clients where code = 'Q-7720'"
    )]
    public async Task What_the_book_keeps_of_an_address_is_nobodys_to_write(string sql)
    {
        await using var clinic = await _scene.OpenAsync(server);
        await DoAsync(clinic, _scene.Desk(clinic), $"update clients set email = '{Mine}' where code = 'Q-7719'");

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await RefusedAsync(clinic, _scene.Of(clinic, StaffRole.Manager), sql, Mine));
    }

    [Fact]
    public async Task However_a_row_comes_by_an_address_it_is_entered_by_whoever_acts_and_not_confirmed()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var desk = _scene.Desk(clinic);
        string[] ways =
        [
            "update clients set email = $1 where code = 'Q-7719'",
            "insert into clients (practice_id, id, code, name, home_salon_id, preferred_days, email) select practice_id, gen_random_uuid(), 'New', 'New', home_salon_id, 0, $1 from clients where code = 'Q-7719'",
            "insert into guardians (practice_id, id, client_id, name, email) select practice_id, gen_random_uuid(), id, 'X', $1 from clients where code = 'Q-7719'",
            "update guardians set email = $1",
            "update guardians set email = $1, client_id = (select id from clients where code = 'Q-7720')",
            "update guardians set ends_on = '2020-01-01', email = $1",
        ];
        for (var n = 0; n < ways.Length; n++)
        {
            var email = $"way{n}@example.test";
            Assert.Equal(1, await DoAsync(clinic, desk, ways[n], email));
            var made = await AddressAsync(clinic, email);
            Assert.Equal((desk.PersonId, "FrontDesk", null), (made.EnteredBy!.Value, made.EnteredRole, made.ConfirmedAt));
        }
        // Time that was over and begins again is a new one too.
        await clinic.ReadAsync(db => ConfirmAsync(db, "way5@example.test"));
        await DoAsync(clinic, desk, "update guardians set ends_on = '2030-01-01' where email = $1", "way5@example.test");
        Assert.Null(
            (
                await clinic.ReadAsync(db =>
                    db.OpeningAddresses.SingleAsync(a => a.Email == "way5@example.test" && a.EndedAt == null, Cancel)
                )
            ).ConfirmedAt
        );
    }

    [Fact]
    public async Task An_address_that_is_not_confirmed_reads_dates_and_no_more_of_any_table()
    {
        Client client = null!;
        Salon salon = null!;
        Person person = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice under test");
                salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                person = scene.Hire("Stylist", StaffRole.Stylist, salon);
                client = scene.AddClient("C-1", "Ada Fenwick", salon, email: Mine);
                scene.LeaveUnconfirmed(client);
            }
        );
        var mine = (await SignInAsync(clinic, Mine))!;
        // A row of the client in every table there is.
        await using var migrator = new NpgsqlConnection(server.Connections.Migrator);
        await migrator.OpenAsync(Cancel);
        var samples = new SampleRows(migrator);
        await samples.LearnAsync(Cancel);
        var world = new SampleRows.World(clinic.PracticeId, client.Id, salon.Id, person.Id);
        foreach (var table in await OwnTablesAsync(clinic))
            await samples.MadeAsync(table.Name, world, Cancel);
        await using (var share = new NpgsqlCommand("update photos set shared = true", migrator))
            await share.ExecuteNonQueryAsync(Cancel);

        Assert.Equal(ReadByDatesOnly, await TablesAsync(clinic, mine));
        // Nor what is done in a client's name without a sign-in.
        Assert.Equal(ReadByDatesOnly, await TablesAsync(clinic, mine with { SignInId = null }));

        await clinic.ReadAsync(db => ConfirmAsync(db, Mine));
        var all = await TablesAsync(clinic, mine);
        Assert.Superset(ReadByDatesOnly.ToHashSet(), all.ToHashSet());
        Assert.Superset(
            new HashSet<string> { "photos", "health_answers", "client_keys", "consents", "access_notes", "hair_systems", "visit_records" },
            all.ToHashSet()
        );
    }

    [Fact]
    public async Task A_client_acts_by_a_sign_in_of_their_own_that_has_not_ended()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var mine = (await SignInAsync(clinic, Theirs))!;
        var other = await IdOfAsync(clinic, "Q-7720");

        Assert.NotEmpty(await TablesAsync(clinic, mine));
        await Assert.ThrowsAsync<PostgresException>(() => TablesAsync(clinic, mine with { ClientId = other }));
        await Assert.ThrowsAsync<PostgresException>(() => TablesAsync(clinic, mine with { SignInId = Guid.NewGuid() }));
    }

    // Every fenced table with a client in it, as far as rows of it are there to be read.
    private async Task<List<string>> TablesAsync(TestClinic clinic, ClientActor actor)
    {
        await using var connection = new NpgsqlConnection(server.Connections.Program);
        await connection.OpenAsync(Cancel);
        await AccessMatrixTests.ActAsync(connection, actor, Cancel);
        var read = new List<string>();
        foreach (var table in await OwnTablesAsync(clinic))
        {
            await using var ask = new NpgsqlCommand(
                $"select exists (select from {table.Name} where {string.Format(null, table.Where, "$1")})",
                connection
            )
            {
                Parameters = { new() { Value = new[] { actor.ClientId } } },
            };
            if (await ask.ExecuteScalarAsync(Cancel) is true)
                read.Add(table.Name);
        }
        return [.. read.Order(StringComparer.Ordinal)];
    }

    private static async Task<IEnumerable<ClientTable>> OwnTablesAsync(TestClinic clinic) =>
        (await clinic.ReadAsync(db => Task.FromResult(ClientTables.FindAll(db.Model)))).Where(t => t.Fenced);

    private async Task<string> RefusedAsync(TestClinic clinic, Actor actor, string sql, string email) =>
        (await Assert.ThrowsAsync<PostgresException>(() => DoAsync(clinic, actor, sql, email))).SqlState;

    private async Task<int> DoAsync(TestClinic clinic, Actor actor, string sql, string? email = null)
    {
        _ = clinic;
        await using var connection = new NpgsqlConnection(server.Connections.Program);
        await connection.OpenAsync(Cancel);
        await AccessMatrixTests.ActAsync(connection, actor, Cancel);
        await using var command = new NpgsqlCommand(sql, connection);
        if (email is not null)
            command.Parameters.Add(new() { Value = email });
        return await command.ExecuteNonQueryAsync(Cancel);
    }
}
