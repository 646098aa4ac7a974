using HairClinic.Domain.Practices;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>A function that reads with its owner's rights is a way past the fence: which there are, and who may call them, is a closed list.</summary>
public sealed class FunctionPrivilegesTests(PgServer server)
{
    /// <summary>Every function of ours: "owner" reads with its owner's rights; behind the arrow, who may call it.</summary>
    private static readonly string[] Closed =
    [
        "act_as(uuid,text,uuid,uuid[],uuid,timestamp with time zone,uuid,boolean) owner > program",
        "address_opens(uuid,uuid,text,timestamp with time zone) owner > nobody",
        "app_actor() > program",
        "app_all() > program",
        "app_at_home(uuid) owner > program",
        "app_client() > program",
        "app_keeps(uuid) owner > program",
        "app_now() > program",
        "app_opens(uuid) owner > program",
        "app_opens_all() > program",
        "app_role() > program",
        "app_salons() > program",
        "app_setting(text) > nobody",
        "app_standing(uuid) owner > nobody",
        "app_trainee() > program",
        "begin_opening(uuid,uuid,uuid,text) owner > nobody",
        "end_need() owner > nobody",
        "end_opening(uuid,uuid,uuid,text) owner > nobody",
        "forget_the_invented() owner > program",
        "guard_opening_address() > nobody",
        "hold_own_bookings() owner > nobody",
        "keep_at_home() owner > nobody",
        "keep_guardian_address() owner > nobody",
        "keep_home_grant() owner > nobody",
        "keep_invitation() > nobody",
        "keep_merged_addresses() owner > nobody",
        "keep_own_address() owner > nobody",
        "keep_roles() owner > nobody",
        "keep_staff() owner > nobody",
        "keep_visit_grants() owner > nobody",
        "keep_whose() owner > nobody",
        "move_visit_grants() owner > nobody",
        "others_may_confirm(uuid,uuid) owner > program",
        "own_page(uuid,uuid,uuid,timestamp with time zone) owner > program",
        "refuse_records_of_the_erased() owner > nobody",
        "refuse_rows_of_the_erased() owner > nobody",
        "refuse_the_erased(uuid,uuid) owner > nobody",
        "refuse_to_change_the_erased() > nobody",
        "refuse_to_change_the_log() > nobody",
        "refuse_to_others(text) > nobody",
        "renew_visit_grants(uuid,uuid,uuid,uuid) owner > nobody",
        "retake_client() owner > nobody",
        "take_turns() > nobody",
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_function_opens_to_those_named_and_to_nobody_else()
    {
        await using var connection = new NpgsqlConnection(server.Connections.Migrator);
        await connection.OpenAsync(Cancel);

        Assert.Equal(Closed, (await FoundAsync(connection)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_function_that_is_made_later_opens_to_nobody()
    {
        await using var connection = new NpgsqlConnection(server.Connections.Migrator);
        await connection.OpenAsync(Cancel);
        await using var transaction = await connection.BeginTransactionAsync(Cancel);
        await using var make = new NpgsqlCommand("create function made_later() returns int language sql as 'select 1'", connection);
        await make.ExecuteNonQueryAsync(Cancel);

        Assert.Contains("made_later() > nobody", await FoundAsync(connection));
    }

    [Theory]
    [InlineData("select renew_visit_grants(gen_random_uuid(), gen_random_uuid(), gen_random_uuid(), null)")]
    [InlineData("select refuse_the_erased(gen_random_uuid(), gen_random_uuid())")]
    [InlineData("select app_standing(gen_random_uuid())")]
    public async Task The_program_cannot_call_what_only_triggers_do(string sql)
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.AddPractice("Practice under test"));
        await using var connection = new NpgsqlConnection(server.Connections.Program);
        await connection.OpenAsync(Cancel);
        await AccessMatrixTests.ActAsync(connection, clinic.Job, Cancel);
        await using var call = new NpgsqlCommand(sql, connection);

        var refused = await Assert.ThrowsAsync<PostgresException>(() => call.ExecuteNonQueryAsync(Cancel));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
    }

    // What an extension brought is the server's own.
    private static async Task<List<string>> FoundAsync(NpgsqlConnection connection)
    {
        await using var ask = new NpgsqlCommand(
            """
            select p.oid::regprocedure::text || case when p.prosecdef then ' owner' else '' end || ' > ' || coalesce((
                select string_agg(coalesce(replace(r.rolname, 'hairclinic_', ''), 'everybody'), ' ' order by r.rolname)
                from aclexplode(coalesce(p.proacl, acldefault('f', p.proowner))) a left join pg_roles r on r.oid = a.grantee
                where a.grantee <> p.proowner), 'nobody')
            from pg_proc p join pg_namespace n on n.oid = p.pronamespace
            where n.nspname = 'public'
              and not exists (select from pg_depend d where d.classid = 'pg_proc'::regclass and d.objid = p.oid and d.deptype = 'e')
            """,
            connection
        );
        var found = new List<string>();
        await using var reader = await ask.ExecuteReaderAsync(Cancel);
        while (await reader.ReadAsync(Cancel))
            found.Add(reader.GetString(0));
        return found;
    }
}
