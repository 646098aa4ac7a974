using System.Diagnostics;
using System.Globalization;
using HairClinic.EmbeddedPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>The bare server of the baselines, beside the repository: a static page with one query and no application around it.</summary>
internal sealed class BareSite(Process process, string data, EmbeddedServer server, string address) : IAsyncDisposable
{
    private static readonly string Source = Path.GetFullPath(Path.Combine(Report.Folder, "../../../../shared/baselines/web"));

    public string Page => address + "/ssrdb";

    /// <summary>What it has worked since it started.</summary>
    public Work Work => Work.Of(process.Id, data);

    /// <returns>Null where the baseline is not there.</returns>
    public static async Task<BareSite?> OpenAsync(string folder, int port)
    {
        if (!Directory.Exists(Source))
            return null;
        var copy = Path.Combine(folder, "bare-source");
        Directory.CreateDirectory(copy);
        foreach (var file in Directory.GetFiles(Source))
            File.Copy(file, Path.Combine(copy, Path.GetFileName(file)), overwrite: true);
        var site = Path.Combine(folder, "bare");
        using (
            var publish = Process.Start(
                "dotnet",
                ["publish", Path.Combine(copy, "web.csproj"), "-c", "Release", "-o", site, "-v", "q", "--nologo"]
            )
        )
            await publish.WaitForExitAsync();
        var data = Path.Combine(folder, "bare-data");
        var server = await EmbeddedServer.StartAsync(new(data) { Durable = false }, NullLogger.Instance);
        await FillAsync(server.AsMigrator);
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = site,
            Environment =
            {
                ["LIMIT_DB"] = server.AsMigrator.TrimEnd(';'),
                ["DOTNET_ENVIRONMENT"] = "Production",
                ["ASPNETCORE_URLS"] = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}"),
            },
        };
        start.ArgumentList.Add("web.dll");
        var process = Process.Start(start)!;
        var address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}");
        await Wrk.WaitAsync(address + "/plain");
        return new BareSite(process, data, server, address);
    }

    public async ValueTask DisposeAsync()
    {
        process.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
        await server.DisposeAsync();
    }

    // The table and the rows of the baseline's own script.
    private static async Task FillAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        foreach (
            var sql in new[]
            {
                "create extension if not exists btree_gist",
                """
                    create table bookings_btree(id bigint generated always as identity primary key, practice_id int not null, chair_id int not null,
                        client_id int not null, during tstzrange not null)
                    """,
                "create index on bookings_btree(chair_id, lower(during))",
                """
                    insert into bookings_btree(practice_id, chair_id, client_id, during)
                    select 1, c, (c * 7919 + k) % 100000,
                        tstzrange(timestamptz '2024-01-01Z' + k * interval '1 hour', timestamptz '2024-01-01Z' + k * interval '1 hour' + interval '45 min')
                    from generate_series(0, 1999) k, generate_series(1, 50) c
                    """,
                "vacuum analyze bookings_btree",
            }
        )
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync();
        }
    }
}
