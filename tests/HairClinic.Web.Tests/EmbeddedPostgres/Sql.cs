using Npgsql;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>One statement on a connection of its own, outside any pool.</summary>
internal static class Sql
{
    public static async Task<object?> AskAsync(string connectionString, string sql)
    {
        var token = TestContext.Current.CancellationToken;
        await using var connection = new NpgsqlConnection(connectionString + ";Pooling=false");
        await connection.OpenAsync(token);
        await using var command = new NpgsqlCommand(sql, connection);
        return await command.ExecuteScalarAsync(token);
    }

    /// <summary>The SQLSTATE with which the server refuses a statement.</summary>
    public static async Task<string> RefusalAsync(string connectionString, string sql) =>
        (await Assert.ThrowsAsync<PostgresException>(() => AskAsync(connectionString, sql))).SqlState;
}
