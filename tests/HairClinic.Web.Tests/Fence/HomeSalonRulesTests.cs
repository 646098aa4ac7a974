using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Sql;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Clients;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>
/// Whoever was let in (one visit, ninety days) tries with raw SQL, as the program's own role, what only the home salon does. No screen
/// stands between: what is refused here is refused by the database.
/// </summary>
public sealed class HomeSalonRulesTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Salon _third = null!;
    private Client _guest = null!;
    private Client _hidden = null!;
    private Client _theirs = null!;
    private Client _second = null!;
    private Person _managerThere = null!;
    private Person _trainee = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static readonly TheoryData<string> OfTheHomeSalon =
    [
        // Taken over, sent away, folded, let go, told to have left.
        "update clients set home_salon_id = {there} where id = {guest}",
        "update clients set home_salon_id = {third} where id = {guest}",
        "update clients set merged_into_id = {theirs} where id = {guest}",
        "update clients set merged_into_id = {guest} where id = {theirs}",
        "update clients set left_on = '2011-01-01' where id = {guest}",
        "update clients set erased_at = now() where id = {guest}",
        // The address that opens their pages.
        "update clients set email = 'x@example.test' where id = {guest}",
        // A record that is folded opens the other to its own client: a new one is no way round.
        "insert into clients select (jsonb_populate_record(c, jsonb_build_object('id', gen_random_uuid(), 'code', 'X-1', 'merged_into_id', {hidden}::text))).* from clients c where id = {theirs}",
        "insert into client_merges (practice_id, id, kept_id, folded_id, merged_at, merged_by, moved) values ({practice}, gen_random_uuid(), {theirs}, {guest}, now(), {person}, '{}')",
        "insert into client_merges (practice_id, id, kept_id, folded_id, merged_at, merged_by, moved) values ({practice}, gen_random_uuid(), {guest}, {theirs}, now(), {person}, '{}')",
        "insert into erasures (practice_id, id, client_id, at, rule_version, counts) values ({practice}, gen_random_uuid(), {guest}, now(), '2', '{}')",
        "insert into guardians (practice_id, id, client_id, name, email) values ({practice}, gen_random_uuid(), {guest}, 'X', 'x@example.test')",
        "insert into client_grants (practice_id, id, client_id, salon_id, reason, starts_at) values ({practice}, gen_random_uuid(), {guest}, {there}, 'Granted', 'epoch')",
        // What belongs to them is theirs.
        "update life_events set client_id = {theirs} where client_id = {guest}",
        // A manager makes nobody at home where they are not themselves, and gives no role.
        "insert into person_salons (practice_id, id, person_id, salon_id) values ({practice}, gen_random_uuid(), {person}, {here})",
        "update people set role = 'Owner' where id = {person}",
        "insert into people (practice_id, id, name, role, \"left\") values ({practice}, gen_random_uuid(), 'X', 'Manager', false)",
        // Nor do they say for how long a visit lets them in.
        "update practice_settings set grant_days_after_visit = 730 where practice_id = {practice}",
        // Nor do they change how long things are kept.
        "insert into retention_rules (practice_id, id, subject, keep_days, by_itself) values ({practice}, gen_random_uuid(), 'ClientsWhoLeft', 30, false)",
    ];

    [Theory]
    [MemberData(nameof(OfTheHomeSalon))]
    public async Task Whoever_was_let_in_is_refused(string sql)
    {
        await using var clinic = await OpenAsync();

        Assert.False(await DoesAsync(clinic.Acting(_managerThere, _given.There), sql));
    }

    [Theory]
    [InlineData("update clients set left_on = '2027-01-01' where id = {guest}")]
    [InlineData("update clients set email = 'x@example.test' where id = {guest}")]
    [InlineData("update clients set merged_into_id = {second} where id = {guest}")]
    [InlineData(
        "insert into guardians (practice_id, id, client_id, name, email) values ({practice}, gen_random_uuid(), {guest}, 'X', 'x@example.test')"
    )]
    [InlineData("update life_events set client_id = {second} where client_id = {guest}")]
    public async Task The_home_salon_may(string sql)
    {
        await using var clinic = await OpenAsync();

        Assert.True(await DoesAsync(clinic.Acting(_given.Of(StaffRole.Manager), _given.Here), sql));
    }

    [Fact]
    public async Task Even_the_home_salon_sends_a_client_elsewhere_only_with_a_line_in_the_access_log()
    {
        await using var clinic = await OpenAsync();
        var desk = clinic.Acting(_given.Desk, _given.Here);

        Assert.False(await DoesAsync(desk, "update clients set home_salon_id = {there} where id = {guest}"));
        Assert.True(
            await DoesAsync(clinic.Acting(_given.Of(StaffRole.Owner)), "update clients set home_salon_id = {there} where id = {guest}")
        );
    }

    [Fact]
    public async Task A_folded_record_is_let_go_by_whoever_is_at_home_with_both()
    {
        await using var clinic = await OpenAsync();
        await clinic.LayAsync(scene =>
            scene.Db.Clients.Single(c => c.Id == _guest.Id).MergeInto(scene.Db.Clients.Single(c => c.Id == _theirs.Id))
        );
        const string letGo = "update clients set merged_into_id = null where id = {guest}";

        Assert.False(await DoesAsync(clinic.Acting(_managerThere, _given.There), letGo));
        Assert.False(await DoesAsync(clinic.Acting(_given.Desk, _given.Here), letGo));
        Assert.True(await DoesAsync(clinic.Acting(_given.Of(StaffRole.Owner)), letGo));
    }

    [Fact]
    public async Task A_job_that_somebody_began_erases_nobody_whom_they_may_not()
    {
        await using var clinic = await OpenAsync();
        const string erases =
            "insert into erasures (practice_id, id, client_id, at, rule_version, counts) values ({practice}, gen_random_uuid(), {guest}, now(), '2', '{}')";
        const string marks = "update clients set erased_at = now(), left_on = '2027-01-01' where id = {guest}";
        JobActor For(Person person, Salon salon) => clinic.Job with { For = clinic.Acting(person, salon) };

        Assert.False(await DoesAsync(For(_managerThere, _given.There), erases));
        Assert.False(await DoesAsync(For(_managerThere, _given.There), marks));
        Assert.True(await DoesAsync(For(_given.Of(StaffRole.Manager), _given.Here), erases));
        Assert.True(await DoesAsync(For(_given.Of(StaffRole.Manager), _given.Here), marks));
        Assert.True(await DoesAsync(clinic.Job, erases));
    }

    [Fact]
    public async Task The_desk_marks_nobody_as_erased_not_even_at_home()
    {
        await using var clinic = await OpenAsync();

        Assert.False(await DoesAsync(clinic.Acting(_given.Desk, _given.Here), "update clients set erased_at = now() where id = {guest}"));
    }

    [Fact]
    public async Task A_visit_is_written_only_on_whom_one_reaches_and_only_in_a_salon_of_ones_own()
    {
        await using var clinic = await OpenAsync();
        var there = clinic.Acting(_given.DeskThere, _given.There);

        Assert.True(await BooksAsync(there, _guest, _given.There));
        Assert.False(await BooksAsync(there, _hidden, _given.There));
        Assert.False(await BooksAsync(there, _guest, _third));
        Assert.False(await BooksAsync(clinic.Acting(_trainee, _given.There), _hidden, _given.There));
        Assert.False(await BooksAsync(new ClientActor(clinic.PracticeId, _guest.Id), _hidden, _given.Here));
        Assert.True(await BooksAsync(new ClientActor(clinic.PracticeId, _guest.Id), _guest, _given.Here));
        Assert.True(await BooksAsync(clinic.Acting(_given.Desk, _given.Here), _guest, _third));
        Assert.True(await BooksAsync(clinic.Acting(_given.Of(StaffRole.Owner)), _hidden, _given.There));
    }

    [Fact]
    public async Task A_visit_in_ones_own_diary_stays_readable_when_its_client_is_not_and_changing_it_is_an_error_not_nothing()
    {
        await using var clinic = await OpenAsync(visitedDaysAgo: 120);
        var there = clinic.Acting(_given.DeskThere, _given.There);

        Assert.True(await DoesAsync(there, "select 1 from visits where client_id = {guest}"));
        Assert.False(await DoesAsync(there, "select 1 from clients where id = {guest}"));
        await Assert.ThrowsAsync<PostgresException>(() => RunAsync(there, "update visits set state = 'Booked' where client_id = {guest}"));
        Assert.False(await DoesAsync(there, "update visits set client_id = {hidden} where client_id = {guest}"));
    }

    [Theory]
    [InlineData("DidNotCome", true)]
    [InlineData("Cancelled", false)]
    public async Task A_tap_that_they_did_not_come_is_taken_back_the_same_day_and_calling_off_ends_it_at_once(string state, bool back)
    {
        await using var clinic = await OpenAsync(visitedDaysAgo: 0);

        Assert.Equal(
            back,
            await DoesAsync(
                clinic.Acting(_given.DeskThere, _given.There),
                $"update visits set state = '{state}' where client_id = {{guest}}; update visits set state = 'Booked' where client_id = {{guest}}"
            )
        );
    }

    private Task<TestClinic> OpenAsync(int visitedDaysAgo = 3) =>
        TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _third = g.Scene.OpenSalon("Mill Lane", "Europe/London", "GBP", chairs: 1);
                _managerThere = g.Scene.Hire("Manager there", StaffRole.Manager, g.There);
                _trainee = g.Scene.Hire("Trainee there", StaffRole.Trainee, g.There);
                _guest = g.Scene.AddClient("G-1", "Guest One", g.Here);
                _second = g.Scene.AddClient("G-2", "Guest Two", g.Here);
                _hidden = g.Scene.AddClient("H-1", "Hidden One", g.Here);
                _theirs = g.Scene.AddClient("T-1", "Theirs One", g.There);
                g.Scene.AddClient("M-1", "Mill One", _third);
                _guest.AddLifeEvent(new LifeEvent(Guid.CreateVersion7(), _guest.Id, LifeEventKind.Other, g.Today, g.Today, away: false));
                var chair = g.Scene.Chairs.First(c => c.SalonId == g.There.Id);
                g.Scene.Book(_guest, g.Scene.Services[0], chair, g.StylistThere, g.Scene.Now - Duration.FromDays(visitedDaysAgo));
            })
        );

    private Task<bool> BooksAsync(Actor actor, Client client, Salon salon) =>
        DoesAsync(
            actor,
            $$"""
            insert into visits select (jsonb_populate_record(null::visits, jsonb_build_object('practice_id', {practice}, 'id', gen_random_uuid(),
                'client_id', '{{client.Id}}', 'salon_id', '{{salon.Id}}', 'service_kind_id', '{{_given.Scene.Services[
                0
            ].Id}}', 'day', '2027-02-20',
                'starts_at', '2027-02-20T10:00:00Z', 'ends_at', '2027-02-20T11:00:00Z', 'state', 'Booked', 'holds_chair', false,
                'holds_client', false))).*
            """
        );

    /// <returns>Whether a row was read, written or changed; false where the fence refused or showed none.</returns>
    private async Task<bool> DoesAsync(Actor actor, string sql)
    {
        try
        {
            return await RunAsync(actor, sql) > 0;
        }
        catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            Assert.True(e.ConstraintName is null or HomeSalonRules.AtHome or HomeSalonRules.StaffOfSalon);
            return false;
        }
    }

    // Undone in any case: each is tried on the same book.
    private async Task<int> RunAsync(Actor actor, string sql)
    {
        var text = sql.Replace("{practice}", $"'{actor.PracticeId}'::uuid", StringComparison.Ordinal)
            .Replace("{person}", $"'{_managerThere.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{here}", $"'{_given.Here.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{there}", $"'{_given.There.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{third}", $"'{_third.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{guest}", $"'{_guest.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{hidden}", $"'{_hidden.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{second}", $"'{_second.Id}'::uuid", StringComparison.Ordinal)
            .Replace("{theirs}", $"'{_theirs.Id}'::uuid", StringComparison.Ordinal);
        await using var connection = new NpgsqlConnection(server.Connections.Program);
        await connection.OpenAsync(Cancel);
        await AccessMatrixTests.ActAsync(connection, actor, Cancel);
        await using var transaction = await connection.BeginTransactionAsync(Cancel);
        await using var command = new NpgsqlCommand(text, connection);
        return text.StartsWith("select", StringComparison.Ordinal)
            ? await command.ExecuteScalarAsync(Cancel) is null
                ? 0
                : 1
            : await command.ExecuteNonQueryAsync(Cancel);
    }
}
