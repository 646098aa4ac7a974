namespace HairClinic.Web.Data.Sql;

/// <summary>Lays <see cref="ClinicSql"/> as the migrator, and tells whether the one that is laid is this program's.</summary>
public static class SqlInstaller
{
    /// <summary>Lays it if it, or the schema under it, differs from what was laid last.</summary>
    /// <param name="version">The schema's newest migration: its tables need their rights too.</param>
    public static async Task InstallAsync(string migratorConnection, string version, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(migratorConnection);
        await connection.OpenAsync(cancellation);
        if (await MarkAsync(connection, cancellation) == Mark(version))
            return;
        await using var transaction = await connection.BeginTransactionAsync(cancellation);
        await RunAsync(ClinicSql.Text);
        await RunAsync($"comment on function app_all() is '{Mark(version)}'");
        await transaction.CommitAsync(cancellation);

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    public static async Task<bool> IsInstalledAsync(string connectionString, string version, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(cancellation);
        return await MarkAsync(connection, cancellation) == Mark(version);
    }

    private static string Mark(string version) => $"{ClinicSql.Mark} on {version}";

    private static async Task<string?> MarkAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var ask = new NpgsqlCommand("select obj_description(to_regprocedure('app_all()'))", connection);
        return await ask.ExecuteScalarAsync(cancellation) as string;
    }
}
