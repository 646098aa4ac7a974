using Npgsql;

namespace HairClinic.Web.Practices.Access;

/// <summary>Lays the fence as the migrator, and tells whether the one that is laid is this program's.</summary>
public static class FenceKeeper
{
    /// <summary>Lays it if it differs from what was laid last.</summary>
    /// <exception cref="InvalidOperationException">A fenced table has no rule.</exception>
    public static async Task LayAsync(string migratorConnection, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(migratorConnection);
        await connection.OpenAsync(cancellation);
        if (await MarkAsync(connection, cancellation) == AccessPolicies.Mark)
            return;
        await using var transaction = await connection.BeginTransactionAsync(cancellation);
        await RunAsync(AccessPolicies.Sql);
        await RunAsync($"comment on function app_all() is '{AccessPolicies.Mark}'");
        await RefuseOpenTablesAsync(connection, cancellation);
        await transaction.CommitAsync(cancellation);

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    public static async Task<bool> IsLaidAsync(string connectionString, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(cancellation);
        return await MarkAsync(connection, cancellation) == AccessPolicies.Mark;
    }

    private static async Task<string?> MarkAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var ask = new NpgsqlCommand("select obj_description(to_regprocedure('app_all()'))", connection);
        return await ask.ExecuteScalarAsync(cancellation) as string;
    }

    // A table with a practice and without a rule would be open to nobody, or worse, to everybody: neither is what its author meant.
    private static async Task RefuseOpenTablesAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var ask = new NpgsqlCommand(
            """
            select string_agg(c.relname, ', ' order by c.relname) from pg_class c join pg_namespace n on n.oid = c.relnamespace
            where n.nspname = 'public' and c.relkind in ('r', 'p') and c.relrowsecurity
              and not exists (select from pg_policy p where p.polrelid = c.oid)
            """,
            connection
        );
        if (await ask.ExecuteScalarAsync(cancellation) is string open)
            throw new InvalidOperationException($"These tables have no rule in {nameof(AccessRules)}: {open}.");
    }
}
