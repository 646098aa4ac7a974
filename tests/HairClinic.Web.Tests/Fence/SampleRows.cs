using System.Text.Json.Nodes;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>
/// Makes a row of any fenced table from what the database says of its columns, so that a new table is tried by the access matrix
/// without a line of code. References to clients, salons and people lead to the given ones.
/// </summary>
internal sealed class SampleRows(NpgsqlConnection migrator)
{
    // Where the type alone would break a check or an exclusion.
    private static readonly Dictionary<string, JsonNode> Fixed = new()
    {
        ["base_materials.life_to_days"] = 9,
        ["service_steps.minutes"] = 15,
        ["salon_hours.closes"] = "12:00",
        ["work_spells.to"] = "12:00",
        ["visits.ends_at"] = "2027-02-03T11:00:00Z",
        ["visits.state"] = "Done",
        ["visit_segments.ends_at"] = "2027-02-03T11:00:00Z",
        ["find_words.kind"] = "ClientName",
        ["client_grants.reason"] = "Granted",
        // One of their own at a time.
        ["opening_addresses.ended_at"] = "2027-02-03T10:00:00Z",
        // Only one runs at a time.
        ["recalculations.ended_at"] = "2027-02-03T10:00:00Z",
    };

    private readonly Dictionary<string, IReadOnlyList<Column>> _columns = [];
    private readonly Dictionary<(string Table, string Column), string> _references = [];

    private long _numbers = 1000;

    public sealed record Column(string Name, string Type, bool Nullable);

    /// <summary>Whose world a row is laid into.</summary>
    public sealed record World(Guid Practice, Guid Client, Guid Salon, Guid Person, Dictionary<string, Guid> Made)
    {
        public World(Guid practice, Guid client, Guid salon, Guid person)
            : this(practice, client, salon, person, []) { }
    }

    public async Task LearnAsync(CancellationToken cancellation)
    {
        await using (
            var ask = new NpgsqlCommand(
                """
                select c.table_name, c.column_name, c.udt_name, c.is_nullable = 'YES'
                from information_schema.columns c join pg_class k on k.relname = c.table_name and k.relrowsecurity
                where c.table_schema = 'public' order by c.table_name, c.ordinal_position
                """,
                migrator
            )
        )
        await using (var reader = await ask.ExecuteReaderAsync(cancellation))
        {
            var all = new List<(string Table, Column Column)>();
            while (await reader.ReadAsync(cancellation))
                all.Add((reader.GetString(0), new Column(reader.GetString(1), reader.GetString(2), reader.GetBoolean(3))));
            foreach (var table in all.GroupBy(c => c.Table))
                _columns[table.Key] = [.. table.Select(c => c.Column)];
        }
        await using var keys = new NpgsqlCommand(
            """
            select t.relname, a.attname, f.relname
            from pg_constraint k join pg_class t on t.oid = k.conrelid join pg_class f on f.oid = k.confrelid
            cross join unnest(k.conkey) as n(attnum) join pg_attribute a on a.attrelid = t.oid and a.attnum = n.attnum
            where k.contype = 'f' and a.attname <> 'practice_id'
            """,
            migrator
        );
        await using var read = await keys.ExecuteReaderAsync(cancellation);
        while (await read.ReadAsync(cancellation))
            _references[(read.GetString(0), read.GetString(1))] = read.GetString(2);
    }

    public IReadOnlyList<string> Tables => [.. _columns.Keys.Order(StringComparer.Ordinal)];

    public bool Has(string table, string column) => _columns[table].Any(c => c.Name == column);

    /// <summary>The row as JSON; whatever it refers to is made first.</summary>
    public async Task<JsonObject> RowAsync(string table, World world, CancellationToken cancellation)
    {
        var row = new JsonObject();
        foreach (var column in _columns[table])
            row[column.Name] = await ValueAsync(table, column, world, cancellation);
        return row;
    }

    /// <returns>The id of one row of the table in that world, made once.</returns>
    public async Task<Guid> MadeAsync(string table, World world, CancellationToken cancellation)
    {
        switch (table)
        {
            case "clients":
                return world.Client;
            case "salons":
                return world.Salon;
            case "people":
                return world.Person;
        }
        if (world.Made.TryGetValue(table, out var id))
            return id;
        // One a practice: whoever came first made it.
        if (table is "practice_settings" or "access_heads" or "stored_preparations")
        {
            await using var only = new NpgsqlCommand($"select id from {table} where practice_id = $1", migrator)
            {
                Parameters = { new() { Value = world.Practice } },
            };
            if (await only.ExecuteScalarAsync(cancellation) is Guid there)
                return there;
        }
        // One a salon, and two of these worlds share theirs.
        if (table is "load_forecasts")
        {
            await using var salons = new NpgsqlCommand($"select id from {table} where practice_id = $1 and salon_id = $2", migrator)
            {
                Parameters =
                {
                    new() { Value = world.Practice },
                    new() { Value = world.Salon },
                },
            };
            if (await salons.ExecuteScalarAsync(cancellation) is Guid there)
                return there;
        }
        var row = await RowAsync(table, world, cancellation);
        await InsertAsync(migrator, table, row, cancellation);
        return world.Made[table] = row["id"]!.GetValue<Guid>();
    }

    public static async Task InsertAsync(NpgsqlConnection connection, string table, JsonObject row, CancellationToken cancellation)
    {
        await using var insert = new NpgsqlCommand(
            $"insert into {table} select * from jsonb_populate_record(null::{table}, $1::jsonb)",
            connection
        )
        {
            Parameters = { new() { Value = row.ToJsonString() } },
        };
        await insert.ExecuteNonQueryAsync(cancellation);
    }

    private async Task<JsonNode?> ValueAsync(string table, Column column, World world, CancellationToken cancellation)
    {
        if (column.Name == "practice_id")
            return world.Practice;
        if (column.Name == "id")
            return Guid.CreateVersion7();
        if (Fixed.TryGetValue($"{table}.{column.Name}", out var value))
            return value.DeepClone();
        if (_references.TryGetValue((table, column.Name), out var other))
        {
            // A grant is either a salon's or a person's; a second client is somebody's duplicate.
            if (table == "client_grants" && column.Name == "person_id" || column.Name is "merged_into_id")
                return null;
            return other == table && column.Nullable ? null : await MadeAsync(other, world, cancellation);
        }
        if (column.Name == "subject_id")
            return world.Client;
        if (column.Name == "salons")
            return new JsonArray(world.Salon);
        if (column.Name is "actor_id" or "client_id")
            return column.Name == "actor_id" ? world.Person : world.Client;
        if (column.Nullable || column.Type.StartsWith('_') && column.Nullable)
            return null;
        return column.Type switch
        {
            "uuid" => Guid.CreateVersion7(),
            "bool" => false,
            "float8" => 1.5,
            // Numbers of a chain are never the same twice.
            "int8" when column.Name == "number" => ++_numbers,
            "int2" or "int4" or "int8" or "numeric" => 1,
            "date" => "2027-02-03",
            "time" => "10:00",
            "timestamptz" => "2027-02-03T10:00:00Z",
            "jsonb" => new JsonObject(),
            "bytea" => "\\x" + Convert.ToHexString(Guid.CreateVersion7().ToByteArray()),
            "text" or "varchar" => $"x {Guid.CreateVersion7()}",
            var type when type.StartsWith('_') => new JsonArray(),
            var type => throw new InvalidOperationException($"What would a {type} for {table}.{column.Name} be?"),
        };
    }
}
