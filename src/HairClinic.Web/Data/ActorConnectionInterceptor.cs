using System.Data.Common;
using HairClinic.Web.Data.Sql;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace HairClinic.Web.Data;

/// <summary>
/// Tells PostgreSQL who is acting each time a connection is opened, for its row policies to read; PostgreSQL answers with an error
/// when that is no longer true. The pool resets the settings when the connection goes back.
/// </summary>
public sealed class ActorConnectionInterceptor(IClock clock) : DbConnectionInterceptor
{
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = Command(connection, eventData);
        try
        {
            command?.ExecuteNonQuery();
        }
        catch (Exception e)
        {
            // A connection without an actor must not be reused for a retry: it would find nothing.
            connection.Close();
            throw Translate(e);
        }
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection,
        ConnectionEndEventData eventData,
        CancellationToken cancellationToken = default
    )
    {
        await using var command = Command(connection, eventData);
        try
        {
            if (command is not null)
                await command.ExecuteNonQueryAsync(cancellationToken);
        }
        catch (Exception e)
        {
            await connection.CloseAsync();
            throw Translate(e);
        }
    }

    private static Exception Translate(Exception e) =>
        e is PostgresException { SqlState: ActorSql.ChangedState } ? new StaleActorException(e) : e;

    private DbCommand? Command(DbConnection connection, ConnectionEndEventData eventData)
    {
        if ((eventData.Context as ClinicDb)?.Actor is not { } actor)
            return null;
        var command = connection.CreateCommand();
        command.CommandText = ActorStatement.Sql;
        ActorStatement.Fill(command.Parameters, actor, clock.GetCurrentInstant());
        return command;
    }
}
