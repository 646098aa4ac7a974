using NodaTime;
using Npgsql;

namespace HairClinic.Benchmarks.DueQuery;

/// <summary>The same questions asked with Npgsql alone: a pooled connection, told who is acting, every value read.</summary>
internal sealed class BareDue(NpgsqlDataSource source, LargeBook book, LocalDate today)
{
    public Task OpenPageAsync() =>
        RunAsync(async connection =>
        {
            await ReadAsync(connection, BareDueSql.Salons, book.PracticeId);
            await ReadAsync(connection, BareDueSql.Page, Listed);
            await ReadAsync(connection, BareDueSql.Counts, Listed);
            await ReadAsync(connection, BareDueSql.Risks, book.PracticeId, new[] { book.SalonId });
        });

    public Task PageOnlyAsync() => RunAsync(connection => ReadAsync(connection, BareDueSql.Page, Listed));

    public Task ClosingAsync(int days) =>
        RunAsync(connection =>
            ReadAsync(connection, BareDueSql.Closing, book.PracticeId, today.ToDateOnly(), today.PlusDays(days).ToDateOnly())
        );

    private object[] Listed =>
        [
            book.PracticeId,
            new[] { book.SalonId },
            today.ToDateOnly(),
            today.PlusDays(7).ToDateOnly(),
            today.AtStartOfDayInZone(DateTimeZoneProviders.Tzdb["Europe/London"]).ToDateTimeUtc(),
        ];

    private async Task RunAsync(Func<NpgsqlConnection, Task> ask)
    {
        await using var connection = await source.OpenConnectionAsync();
        // Without row security nobody asks for the practice, but the round trip is the same.
        await using (
            var tell = new NpgsqlCommand("select set_config('app.practice', $1, false), set_config('jit', 'off', false)", connection)
        )
        {
            tell.Parameters.Add(new() { Value = book.PracticeId.ToString() });
            await tell.ExecuteNonQueryAsync();
        }
        await ask(connection);
    }

    private static async Task<int> ReadAsync(NpgsqlConnection connection, string sql, params object[] values)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
            command.Parameters.Add(new() { Value = value });
        await using var reader = await command.ExecuteReaderAsync();
        var read = 0;
        var row = new object[reader.FieldCount];
        while (await reader.ReadAsync())
            read += reader.GetValues(row);
        return read;
    }
}
