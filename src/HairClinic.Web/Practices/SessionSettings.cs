using System.Data.Common;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace HairClinic.Web.Practices;

/// <summary>
/// Tells PostgreSQL who is acting each time a connection is opened, for its row policies to read. The
/// pool resets the settings when the connection goes back.
/// </summary>
/// <remarks>In the same breath it turns off the server's compiling of queries, which takes longer than any of ours runs.</remarks>
public sealed class SessionSettings : DbConnectionInterceptor
{
    private const string Sql = """
        select set_config('app.practice', @practice, false), set_config('app.actor', @actor, false),
               set_config('app.role', @role, false), set_config('app.salons', @salons, false),
               set_config('app.client', @client, false), set_config('jit', 'off', false)
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

    private static DbCommand? Command(DbConnection connection, ConnectionEndEventData eventData)
    {
        if ((eventData.Context as ClinicDb)?.Actor is not { } actor)
            return null;
        var command = connection.CreateCommand();
        command.CommandText = Sql;
        Add("practice", actor.PracticeId.ToString());
        Add("actor", actor.Id?.ToString() ?? "");
        Add("role", actor.Role);
        Add("salons", actor is PersonActor person ? string.Join(',', person.Salons) : "");
        Add("client", actor is ClientActor client ? client.ClientId.ToString() : "");
        return command;

        void Add(string name, string value)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value;
            command.Parameters.Add(parameter);
        }
    }
}
