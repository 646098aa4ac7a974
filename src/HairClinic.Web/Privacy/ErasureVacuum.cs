using System.Diagnostics;
using HairClinic.Web.Data;

namespace HairClinic.Web.Privacy;

/// <summary>
/// Takes out of the database's files what an erasure left there. PostgreSQL keeps the former versions of rows in its pages, and a
/// plain VACUUM only frees their place: the bytes stay until something is written over them. So the tables are rewritten, and
/// with them the planner's samples of values (<c>pg_statistic</c>). The database's own log and backups keep theirs.
/// </summary>
public sealed class ErasureVacuum(DatabaseLifetime database, IClock clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    // A machine that is off at night is not spared for ever.
    private static readonly Duration Longest = Duration.FromHours(24);

    /// <summary>
    /// Rewrites the tables if somebody was erased since it was last done: in the first salon's <see cref="MaintenanceHours"/>, or a day
    /// later at any hour. Other work waits meanwhile; a table in use for longer is left for the next call.
    /// </summary>
    /// <returns>Whether it was done. Never without the migrator's connection: only the owner of a table may do it.</returns>
    public async Task<bool> VacuumIfDueAsync(CancellationToken cancellation)
    {
        if (database.Connections.Migrator is not { } migrator)
            return false;
        await using var connection = new NpgsqlConnection(migrator + ";Pooling=false;Command Timeout=900");
        await connection.OpenAsync(cancellation);
        if (await DueAsync(connection, cancellation) is not { } last)
            return false;
        var tables = Tables(migrator);
        await RunAsync("set lock_timeout = '3s'");
        try
        {
            // First the samples, so that their former versions are as old as the rows' when the files are rewritten.
            await RunAsync($"analyze {string.Join(", ", tables)}");
            if (!await OlderEndAsync(connection, cancellation))
                return false;
            foreach (var table in tables.Append("pg_statistic"))
                await RunAsync($"vacuum full {table}");
        }
        catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.LockNotAvailable)
        {
            return false;
        }
        await RunAsync($"comment on table erasures is '{last}'");
        return true;

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    /// <summary>The moment of the last erasure to be cleared up after, as it is noted once that is done; null when there is none.</summary>
    private async Task<string?> DueAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var ask = new NpgsqlCommand(
            """
            select min(at), max(at), (select zone from salons order by id limit 1) from erasures
            where at > coalesce(obj_description('erasures'::regclass, 'pg_class')::timestamptz, '-infinity')
            """,
            connection
        );
        var now = clock.GetCurrentInstant();
        await using var row = await ask.ExecuteReaderAsync(cancellation);
        await row.ReadAsync(cancellation);
        if (row.IsDBNull(0))
            return null;
        var first = Instant.FromDateTimeUtc(row.GetDateTime(0));
        if (now - first < Longest && !MaintenanceHours.Cover(now, row.IsDBNull(2) ? null : row.GetString(2)))
            return null;
        return row.GetDateTime(1).ToString("yyyy-MM-dd HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture);
    }

    /// <summary>Waits for the transactions that are open now: what they may still see would be carried over into the new files.</summary>
    /// <remarks>
    /// For those of other databases on the server too: as long as one of them writes, whoever begins to read here is taken to see what was before it.
    /// </remarks>
    private static async Task<bool> OlderEndAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        await using var count = new NpgsqlCommand("select pg_current_xact_id()::text", connection);
        var now = (string)(await count.ExecuteScalarAsync(cancellation))!;
        await using var ask = new NpgsqlCommand($"select pg_snapshot_xmin(pg_current_snapshot()) > '{now}'::xid8", connection);
        var older = await OpenAsync(connection, cancellation);
        bool ended;
        while (!(ended = older.Count == 0 && (bool)(await ask.ExecuteScalarAsync(cancellation))!) && waited.Elapsed < Patience)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(200), cancellation);
            older.IntersectWith(await OpenAsync(connection, cancellation));
        }
        return ended;
    }

    private static async Task<HashSet<string>> OpenAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var ask = new NpgsqlCommand(
            """
            select l.virtualtransaction from pg_locks l join pg_stat_activity a on a.pid = l.pid
            where l.locktype = 'virtualxid' and l.mode = 'ExclusiveLock' and a.datname = current_database() and l.pid <> pg_backend_pid()
            """,
            connection
        );
        var open = new HashSet<string>();
        await using var rows = await ask.ExecuteReaderAsync(cancellation);
        while (await rows.ReadAsync(cancellation))
            open.Add(rows.GetString(0));
        return open;
    }

    private static IReadOnlyList<string> Tables(string migrator)
    {
        using var db = new ClinicDb(ClinicDbOptions.For(migrator));
        return [.. ErasureStep.Plan(db.Model).Select(s => s.Table).Append("client_keys").Distinct().Order(StringComparer.Ordinal)];
    }
}

/// <summary>When salons are empty: from two to five in the morning there.</summary>
public static class MaintenanceHours
{
    /// <param name="zone">The salon's time zone; null counts as UTC.</param>
    public static bool Cover(Instant now, string? zone) => now.InZone(DateTimeZoneProviders.Tzdb[zone ?? "UTC"]).Hour is >= 2 and < 5;
}
