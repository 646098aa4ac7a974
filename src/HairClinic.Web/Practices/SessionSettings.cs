using System.Data.Common;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace HairClinic.Web.Practices;

/// <summary>
/// Tells PostgreSQL who is acting each time a connection is opened, for its row policies to read. The
/// pool resets the settings when the connection goes back.
/// </summary>
/// <remarks>In the same breath it turns off the server's compiling of queries, which takes longer than any of ours runs.</remarks>
public sealed class SessionSettings : DbConnectionInterceptor
{
    private const string Sql = """
        select set_config('app.practice', $1, false), set_config('app.actor', $2, false),
               set_config('app.role', $3, false), set_config('app.salons', $4, false),
               set_config('app.client', $5, false), set_config('jit', 'off', false)
        """;

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = Command(connection, eventData);
        command?.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection,
        ConnectionEndEventData eventData,
        CancellationToken cancellationToken = default
    )
    {
        await using var command = Command(connection, eventData);
        if (command is not null)
            await command.ExecuteNonQueryAsync(cancellationToken);
    }

    /// <summary>The same statement for those who send it in one breath with their question.</summary>
    public static NpgsqlBatchCommand StatementFor(Actor actor)
    {
        var command = new NpgsqlBatchCommand(Sql);
        foreach (var value in ValuesOf(actor))
            command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = value });
        return command;
    }

    private static DbCommand? Command(DbConnection connection, ConnectionEndEventData eventData)
    {
        if ((eventData.Context as ClinicDb)?.Actor is not { } actor)
            return null;
        var command = connection.CreateCommand();
        command.CommandText = Sql;
        foreach (var value in ValuesOf(actor))
            command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = value });
        return command;
    }

    private static string[] ValuesOf(Actor actor) =>
        [
            actor.PracticeId.ToString(),
            actor.Id?.ToString() ?? "",
            actor.Role,
            actor is PersonActor person ? string.Join(',', person.Salons) : "",
            actor is ClientActor client ? client.ClientId.ToString() : "",
        ];
}
