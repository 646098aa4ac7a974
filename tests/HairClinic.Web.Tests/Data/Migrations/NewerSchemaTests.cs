using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Npgsql;

namespace HairClinic.Web.Tests.Data.Migrations;

/// <summary>A program meets a database that a newer one worked on.</summary>
public sealed class NewerSchemaTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_older_program_refuses_a_newer_schema_in_one_sentence_and_changes_nothing()
    {
        var name = $"newer_{Guid.NewGuid():N}";
        await Sql.AskAsync(server.Administrator, $"create database {name} owner hairclinic_migrator template {PgServer.SiteTemplate}");
        await Sql.AskAsync(server.Administrator, $"grant connect on database {name} to hairclinic_program");
        var (migrator, program) = (In(server.Connections.Migrator!), In(server.Connections.Program));
        await SchemaMigrator.MigrateAsync(migrator, Cancel);
        await Sql.AskAsync(
            migrator,
            """
            alter table salons add column told_later text;
            insert into "__EFMigrationsHistory" values ('29990101000000_LaterOn', '99.0.0')
            """
        );

        var refusals = new[]
        {
            await Assert.ThrowsAsync<InvalidOperationException>(() => SchemaMigrator.MigrateAsync(migrator, Cancel)),
            await Assert.ThrowsAsync<InvalidOperationException>(() => SchemaMigrator.ThrowIfSchemaDiffersAsync(program, Cancel)),
        };

        Assert.All(refusals, r => Assert.StartsWith("A newer program worked on this database (“29990101000000_LaterOn”)", r.Message));
        Assert.All(refusals, r => Assert.DoesNotContain('\n', r.Message));

        string In(string connection) => new NpgsqlConnectionStringBuilder(connection) { Database = name, Pooling = false }.ConnectionString;
    }
}
