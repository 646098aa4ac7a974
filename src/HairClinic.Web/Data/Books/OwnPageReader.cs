using System.Text.Json;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Sql;
using HairClinic.Web.Fence;
using Npgsql;

namespace HairClinic.Web.Data.Books;

/// <summary>
/// All a client's first page shows, in one statement that says who is acting and brings one row.
/// Thousands of clients open this page at the same hour of the morning, so it is the one page that asks past EF.
/// </summary>
public sealed class OwnPageReader(ClinicDatabase database)
{
    private static readonly int MostConnections = Math.Max(4, 2 * Environment.ProcessorCount);

    private string? _connection;

    /// <returns>Null when there is no such client any more, or the sign-in was ended.</returns>
    public async Task<OwnPageFacts?> ReadAsync(ClientActor actor, Instant now, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(_connection ??= Shared(database.Connections.Program));
        await connection.OpenAsync(cancellation);
        await using var command = new NpgsqlCommand(OwnPageFunction.Call, connection)
        {
            Parameters =
            {
                new NpgsqlParameter<Guid> { TypedValue = actor.PracticeId },
                new NpgsqlParameter<Guid> { TypedValue = actor.ClientId },
                new NpgsqlParameter<Guid?> { TypedValue = actor.SignInId },
                new NpgsqlParameter<DateTime> { TypedValue = now.ToDateTimeUtc() },
            },
        };
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        return await reader.ReadAsync(cancellation) ? Facts(reader) : null;
    }

    /// <summary>
    /// A few connections that many questions share at once, so that each has the plan of this statement at hand. They are never
    /// reset: each question says in its own transaction who asks, and with that transaction it is forgotten. Nothing else may use them,
    /// and no second statement join this one: the driver takes it for prepared after the first has failed.
    /// </summary>
    private static string Shared(string program) =>
        new NpgsqlConnectionStringBuilder(ClinicConnections.Preparing(program))
        {
            MaxPoolSize = MostConnections,
            Multiplexing = true,
        }.ConnectionString;

    private static OwnPageFacts Facts(NpgsqlDataReader row) =>
        new(row.GetString(0), row.GetString(1), Text(row, 2), row.GetString(3), row.GetInt32(4), row.GetInt32(5))
        {
            Bond = row.IsDBNull(6)
                ? null
                : new OwnBondFacts(
                    Day(row, 6)!.Value,
                    row.IsDBNull(7) ? null : Moment(row, 7),
                    Day(row, 8)!.Value,
                    Day(row, 9)!.Value,
                    Day(row, 10)!.Value,
                    JsonSerializer.Deserialize<List<DueReason>>(row.GetString(11), JsonColumns.Options)!,
                    Day(row, 12),
                    row.IsDBNull(13) ? null : row.GetInt32(13)
                ),
            Visit = row.IsDBNull(14)
                ? null
                : new OwnVisitFacts(row.GetGuid(14), Moment(row, 15), row.GetString(16), row.GetString(17), row.GetString(18) == "Arrived"),
            Coming = row.IsDBNull(19) ? null : new OwnUnitFacts(Enum.Parse<UnitState>(row.GetString(19)), Day(row, 20)),
            HasPhotos = row.GetBoolean(21),
            HasConsents = row.GetBoolean(22),
            WasSeen = row.GetBoolean(23),
            OpensAll = row.GetBoolean(24),
            IsDemo = row.GetBoolean(25),
        };

    private static string? Text(NpgsqlDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    private static LocalDate? Day(NpgsqlDataReader row, int column) =>
        row.IsDBNull(column) ? null : LocalDate.FromDateOnly(row.GetFieldValue<DateOnly>(column));

    private static Instant Moment(NpgsqlDataReader row, int column) => Instant.FromDateTimeUtc(row.GetDateTime(column));
}
