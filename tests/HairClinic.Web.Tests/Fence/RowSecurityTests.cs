using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

public sealed class RowSecurityTests(PgServer server)
{
    /// <summary>Tables that are read before anybody is known. The list is closed: a new one needs a decision in DEVELOPERS.md.</summary>
    private static readonly string[] Unfenced =
    [
        "__EFMigrationsHistory",
        "data_protection_keys",
        "master_key_marks",
        "link_asks",
        "practices",
        "sign_in_links",
        "sign_in_sessions",
        "user_claims",
        "user_logins",
        "user_passkeys",
        "user_tokens",
        "users",
    ];

    [Fact]
    public async Task Every_other_table_has_forced_row_security_and_its_policy()
    {
        await using var connection = await OpenAsync(server.Connections.Migrator!);
        await using var ask = new NpgsqlCommand(
            """
            select c.relname,
                   c.relrowsecurity and c.relforcerowsecurity
                   and exists (select from pg_policy p where p.polrelid = c.oid and p.polqual is not null and p.polwithcheck is not null)
            from pg_class c join pg_namespace n on n.oid = c.relnamespace
            where n.nspname = 'public' and c.relkind in ('r', 'p') order by 1
            """,
            connection
        );
        var open = new List<string>();
        await using (var reader = await ask.ExecuteReaderAsync(TestContext.Current.CancellationToken))
        {
            while (await reader.ReadAsync(TestContext.Current.CancellationToken))
            {
                if (!reader.GetBoolean(1))
                    open.Add(reader.GetString(0));
            }
        }

        Assert.Equal(Unfenced.Order(StringComparer.Ordinal), open.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Without_an_actor_the_program_reads_no_row()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.AddPractice("Practice under test"));
        await using var connection = await OpenAsync(server.Connections.Program);
        await using var ask = new NpgsqlCommand("select count(*) from practice_settings", connection);

        Assert.Equal(0L, await ask.ExecuteScalarAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_row_of_another_practice_can_be_neither_written_nor_taken()
    {
        await using var theirs = await TestClinic.OpenAsync(server, scene => scene.AddPractice("Theirs"));
        await using var connection = await OpenAsync(server.Connections.Program);
        await using (var act = new NpgsqlCommand("select set_config('app.practice', $1, false)", connection))
        {
            act.Parameters.Add(new() { Value = Guid.CreateVersion7().ToString() });
            await act.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        }
        await using var insert = new NpgsqlCommand(
            "insert into workshops (practice_id, id, name, retired) values ($1, $2, 'x', false)",
            connection
        );
        insert.Parameters.Add(new() { Value = theirs.PracticeId });
        insert.Parameters.Add(new() { Value = Guid.CreateVersion7() });
        await using var take = new NpgsqlCommand("update practice_settings set name = 'ours' where practice_id = $1", connection);
        take.Parameters.Add(new() { Value = theirs.PracticeId });

        var refused = await Assert.ThrowsAsync<PostgresException>(() => insert.ExecuteNonQueryAsync(TestContext.Current.CancellationToken));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        Assert.Equal(0, await take.ExecuteNonQueryAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_pooled_connection_forgets_who_used_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.AddPractice("Practice under test"));
        var only = new NpgsqlConnectionStringBuilder(server.Connections.Program)
        {
            MaxPoolSize = 1,
            ApplicationName = "one connection",
        }.ToString();
        await using (var acting = new ClinicDb(ClinicDbOptions.For(only), clinic.Job))
            Assert.Equal(1, await acting.PracticeSettings.CountAsync(TestContext.Current.CancellationToken));

        await using var nobody = new ClinicDb(ClinicDbOptions.For(only), actor: null);

        Assert.Equal(0, await nobody.PracticeSettings.IgnoreQueryFilters().CountAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Nobody_acting_opens_no_context()
    {
        await using var clinic = await TestClinic.OpenAsync(server);
        await using var scope = new ServiceCollection().AddScoped<CurrentActor>().BuildServiceProvider().CreateAsyncScope();

        var factory = new ClinicDbFactory(
            ClinicDbOptions.For(server.Connections.Program),
            scope.ServiceProvider.GetRequiredService<CurrentActor>()
        );

        Assert.Throws<NoActorException>(factory.Open);
    }

    [Fact]
    public async Task A_program_role_that_could_step_over_the_fence_is_refused_at_start()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            SchemaMigrator.RefuseStrongRoleAsync(server.Connections.Migrator!, TestContext.Current.CancellationToken)
        );
        await SchemaMigrator.RefuseStrongRoleAsync(server.Connections.Program, TestContext.Current.CancellationToken);
    }

    [Fact]
    public void Moving_a_row_between_practices_is_refused()
    {
        var settings = new PracticeSettings(Guid.CreateVersion7(), "Ours", "GB", "en-GB");
        settings.AssignToPractice(Guid.CreateVersion7());

        Assert.Throws<InvalidOperationException>(() => settings.AssignToPractice(Guid.CreateVersion7()));
    }

    private static async Task<NpgsqlConnection> OpenAsync(string connectionString)
    {
        var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        return connection;
    }
}
