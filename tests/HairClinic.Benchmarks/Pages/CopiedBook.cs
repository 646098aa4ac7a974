using Npgsql;

namespace HairClinic.Benchmarks.Pages;

/// <summary>
/// A book so many times over: each client with their units, bonds, visits, plan and the words they are found by, under ids, codes and
/// serials of their own. What is booked for today and later is not copied, as the chairs are not.
/// </summary>
internal static class CopiedBook
{
    private static readonly string[] Tables =
    [
        "clients",
        "client_grants",
        "care_facts",
        "life_events",
        "contact_notes",
        "find_words",
        "hair_systems",
        "promise_revisions",
        "unit_repairs",
        "visits",
        "visit_segments",
        "visit_records",
        "take_down_products",
        "bonds",
        "bond_products",
        "reorder_plans",
    ];

    private static readonly string[] Copied =
    [
        "id",
        "client_id",
        "subject_id",
        "hair_system_id",
        "removed_unit_id",
        "repeats_id",
        "bond_id",
        "visit_id",
        "visit_record_id",
        "merged_into_id",
    ];

    /// <returns>How many clients there are then.</returns>
    public static async Task<int> MultiplyAsync(string administrator, Guid practice, int wanted)
    {
        await using var connection = new NpgsqlConnection(administrator);
        await connection.OpenAsync();
        var first = await CountAsync();
        // The rows are sound by construction: reference checks of millions of them would only take time.
        await RunAsync("set session_replication_role = replica");
        if (wanted / first is var times and > 1)
        {
            foreach (var table in Tables)
                await RunAsync(await CopyAsync(table, times - 1));
        }
        await RunAsync("vacuum analyze");
        return await CountAsync();

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
            if (sql.Contains("@practice", StringComparison.Ordinal))
                command.Parameters.AddWithValue("practice", practice);
            await command.ExecuteNonQueryAsync();
        }

        async Task<int> CountAsync()
        {
            await using var command = new NpgsqlCommand("select count(*)::int from clients where practice_id = $1", connection);
            command.Parameters.AddWithValue(practice);
            return (int)(await command.ExecuteScalarAsync())!;
        }

        async Task<string> CopyAsync(string table, int copies)
        {
            var columns = new List<string>();
            await using var command = new NpgsqlCommand(
                "select quote_ident(column_name::text) from information_schema.columns where table_name = $1 and table_schema = 'public'",
                connection
            );
            command.Parameters.AddWithValue(table);
            await using var reader = await command.ExecuteReaderAsync();
            while (await reader.ReadAsync())
                columns.Add(reader.GetString(0));
            return $"""
                insert into {table} ({string.Join(", ", columns)})
                select {string.Join(", ", columns.Select(c => Value(table, c)))} from {table} t, generate_series(1, {copies}) n
                where t.practice_id = @practice{Past(table)}
                """;
        }
    }

    private static string Past(string table) =>
        table switch
        {
            "visits" => " and t.day < current_date",
            "visit_segments" or "visit_records" =>
                " and exists (select from visits v where v.practice_id = t.practice_id and v.id = t.visit_id and v.day < current_date)",
            _ => "",
        };

    private static string Value(string table, string column) =>
        (table, column) switch
        {
            ("clients", "code") or ("hair_systems", "serial") or ("visits", "book_key") => $"t.{column} || '-' || n",
            ("find_words", "word") => "case when t.kind in ('ClientCode', 'UnitSerial', 'ClientPhone') then t.word || n else t.word end",
            (_, "holds_client" or "holds_chair" or "holds_hands") => "false",
            _ when Copied.Contains(column) => $"md5(t.{column}::text || n)::uuid",
            _ => $"t.{column}",
        };
}
