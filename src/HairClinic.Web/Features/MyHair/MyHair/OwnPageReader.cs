using System.Data.Common;
using System.Reflection;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>
/// All a client's first page shows, in one statement that says who is acting and brings one row (own-page.sql, beside this).
/// Thousands of clients open this page at the same hour of the morning, so it is the one page that asks past EF.
/// </summary>
public sealed class OwnPageReader(DatabaseLifetime database) : IAsyncDisposable
{
    public const string Call = "select * from own_page($1, $2, $3, $4)";

    // Half of the cores: with more, the answers of some clients wait behind others' for a core, and the slowest take thrice as long.
    private static readonly int MostConnections = Math.Max(1, Environment.ProcessorCount / 2);

    private readonly Lazy<NpgsqlDataSource> _source = new(() => Shared(database.Connections.Program));

    /// <returns>Null when there is no such client any more, or the sign-in was ended.</returns>
    public async Task<MyHair.Screen?> ReadAsync(ClientActor actor, Instant now, CancellationToken cancellation)
    {
        await using var command = _source.Value.CreateCommand(Call);
        command.Parameters.Add(new NpgsqlParameter<Guid> { TypedValue = actor.PracticeId });
        command.Parameters.Add(new NpgsqlParameter<Guid> { TypedValue = actor.ClientId });
        command.Parameters.Add(new NpgsqlParameter<Guid?> { TypedValue = actor.SignInId });
        command.Parameters.Add(new NpgsqlParameter<Instant> { TypedValue = now });
        await using var row = await command.ExecuteReaderAsync(cancellation);
        return await row.ReadAsync(cancellation) ? (MyHair.Screen?)OwnPageRowMapper.Screen.Read(row) : null;
    }

    public ValueTask DisposeAsync() => _source.IsValueCreated ? _source.Value.DisposeAsync() : ValueTask.CompletedTask;

    /// <summary>
    /// A few connections that many questions share at once, so that each has the plan of this statement at hand. They are never
    /// reset: each question says in its own transaction who asks, and with that transaction it is forgotten. Nothing else may use them,
    /// and no second statement join this one: the driver takes it for prepared after the first has failed.
    /// </summary>
    private static NpgsqlDataSource Shared(string program)
    {
        var source = new NpgsqlDataSourceBuilder(DatabaseConnectionStrings.WithAutoPrepare(program));
        source.ConnectionStringBuilder.MaxPoolSize = MostConnections;
        source.ConnectionStringBuilder.Multiplexing = true;
        source.UseNodaTime();
        return source.Build();
    }
}

/// <summary>
/// A record as a row has it: each value is the column of its name in snake case, a record within it the columns that begin with its
/// name, and none of it where the first of those is empty.
/// </summary>
public sealed class OwnPageRowMapper
{
    public static readonly OwnPageRowMapper Screen = new(typeof(MyHair.Screen), "");

    private readonly ConstructorInvoker _make;
    private readonly Part[] _parts;

    private OwnPageRowMapper(Type record, string prefix)
    {
        var constructor = record.GetConstructors().Single();
        _make = ConstructorInvoker.Create(constructor);
        _parts =
        [
            .. constructor
                .GetParameters()
                .Select(p => (Name: prefix + JsonNamingPolicy.SnakeCaseLower.ConvertName(p.Name!), Type: p.ParameterType))
                .Select(p => new Part(
                    p.Name,
                    Nullable.GetUnderlyingType(p.Type) ?? p.Type,
                    p.Type.DeclaringType == record.DeclaringType ? new OwnPageRowMapper(p.Type, p.Name + "_") : null
                )),
        ];
    }

    public IEnumerable<(string Name, Type Type)> Columns => _parts.SelectMany(p => p.Within?.Columns ?? [(p.Name, p.Type)]);

    public object? Read(DbDataReader row) =>
        row.IsDBNull(row.GetOrdinal(_parts[0].Name)) ? null : _make.Invoke(Array.ConvertAll(_parts, p => p.Read(row)).AsSpan());

    private sealed record Part(string Name, Type Type, OwnPageRowMapper? Within)
    {
        public object? Read(DbDataReader row)
        {
            if (Within is not null)
                return Within.Read(row);
            var at = row.GetOrdinal(Name);
            return row.IsDBNull(at) ? null
                : Type.IsEnum ? Enum.Parse(Type, row.GetString(at))
                : Type == typeof(IReadOnlyList<DueReason>) ? JsonSerializer.Deserialize(row.GetString(at), Type, JsonColumns.Options)
                : row.GetValue(at);
        }
    }
}
