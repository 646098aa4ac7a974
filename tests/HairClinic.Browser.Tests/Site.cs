using System.Diagnostics;
using HairClinic.EmbeddedPostgres;
using HairClinic.Web.Data;
using HairClinic.Web.Shell.Logs;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Playwright;
using NodaTime;
using NodaTime.Testing;
using Npgsql;
using IClock = NodaTime.IClock;

namespace HairClinic.Browser.Tests;

/// <summary>The whole program on a real port, on a PostgreSQL of its own, at a time the story chooses.</summary>
public sealed class Site : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("hairclinic-site-");
    private readonly ILoggerProvider? _log;
    private Factory _factory;
    private int _starts;
    private readonly EmbeddedServer _server;
    private readonly List<IBrowserContext> _devices = [];

    private Site(DirectoryInfo folder, EmbeddedServer server, Instant now, ILoggerProvider? log)
    {
        _folder = folder;
        _server = server;
        _log = log;
        Clock = new FakeClock(now);
        _factory = Start(port: 0);
        Address = _factory.ClientOptions.BaseAddress;
    }

    public Uri Address { get; }

    public FakeClock Clock { get; }

    public IServiceProvider Services => _factory.Services;

    public string MailFolder => Path.Combine(_folder.FullName, "mail");

    /// <summary>Somebody's device, to be put away before the program ends: an open page comes back at once and has it wait.</summary>
    public void Use(IBrowserContext device) => _devices.Add(device);

    /// <summary>A site on an empty database, or on a copy of one that was closed.</summary>
    /// <param name="log">Where its log is kept; nowhere without.</param>
    /// <param name="like">What <see cref="CloseAsync"/> left.</param>
    public static async Task<Site> OpenAsync(Instant now, ILoggerProvider? log = null, DirectoryInfo? like = null)
    {
        var folder = Directory.CreateTempSubdirectory("hairclinic-site-");
        if (like is not null)
            await CopyAsync(like, folder);
        // The server runs as an unprivileged user and must be able to walk here.
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        var server = await EmbeddedServer.StartAsync(new(folder.FullName) { Durable = false }, NullLogger.Instance);
        return new Site(folder, server, now, log);
    }

    /// <summary>The program ends and begins anew, at the same address on the same book: no live page is known to it any more.</summary>
    public async Task RestartAsync()
    {
        await _factory.DisposeAsync();
        _factory = Start(Address.Port);
    }

    /// <summary>Until it is disposed of, the database can be reached by nobody, and whoever was connected is cut off.</summary>
    public async Task<IAsyncDisposable> LoseDatabaseAsync()
    {
        var to = new NpgsqlConnectionStringBuilder(_server.Administrator);
        var socket = Path.Combine(to.Host!, $".s.PGSQL.{to.Port}");
        await using var connection = new NpgsqlConnection(_server.Administrator + ";Pooling=false");
        await connection.OpenAsync();
        File.Move(socket, socket + ".away");
        await using var cut = new NpgsqlCommand(
            "select pg_terminate_backend(pid) from pg_stat_activity where pid <> pg_backend_pid() and backend_type = 'client backend'",
            connection
        );
        await cut.ExecuteNonQueryAsync();
        return new Back(() => File.Move(socket + ".away", socket));
    }

    /// <summary>Does something in a practice's own book, past the pages.</summary>
    public Task<T> DoAsync<T>(Guid practice, Func<IServiceProvider, ClinicDb, Task<T>> work) =>
        Services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                practice,
                "story",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(services, db);
                }
            );

    /// <summary>As <see cref="DoAsync{T}"/>, through an outage: the first to ask after it meets a broken connection.</summary>
    public async Task<T> ReadAsync<T>(Guid practice, Func<ClinicDb, Task<T>> read)
    {
        while (true)
        {
            try
            {
                return await DoAsync(practice, (_, db) => read(db));
            }
            catch (Exception e) when (ConnectionLoss.Is(e))
            {
                await Task.Delay(100);
            }
        }
    }

    public async ValueTask DisposeAsync() => (await CloseAsync()).Delete(recursive: true);

    /// <summary>Ends it and leaves its folder behind.</summary>
    public async Task<DirectoryInfo> CloseAsync()
    {
        foreach (var device in _devices)
            await device.CloseAsync();
        await _factory.DisposeAsync();
        await _server.DisposeAsync();
        return _folder;
    }

    /// <summary>With owners and modes: the files of a database belong to whom its server runs as.</summary>
    private static async Task CopyAsync(DirectoryInfo from, DirectoryInfo to)
    {
        using var copy = Process.Start("cp", ["-a", $"{from.FullName}/.", to.FullName]);
        await copy.WaitForExitAsync();
        if (copy.ExitCode != 0)
            throw new IOException($"{from} could not be copied to {to}: cp ended with {copy.ExitCode}.");
    }

    private Factory Start(int port)
    {
        // A program that begins has no connections yet, good or broken: none of another that ran in this process.
        var anew = $";Application Name=site {++_starts}";
        var made = new Factory(
            DatabaseConnectionStrings.FromEmbeddedServer(_server) with
            {
                Program = DatabaseConnectionStrings.FromEmbeddedServer(_server).Program + anew,
                Migrator = DatabaseConnectionStrings.FromEmbeddedServer(_server).Migrator + anew,
            },
            _folder.FullName,
            Clock,
            _log
        );
        made.UseKestrel(k => k.Listen(System.Net.IPAddress.Loopback, port));
        made.StartServer();
        return made;
    }

    private sealed class Back(Action back) : IAsyncDisposable
    {
        private bool _done;

        public ValueTask DisposeAsync()
        {
            if (!_done)
                back();
            _done = true;
            return ValueTask.CompletedTask;
        }
    }

    private sealed class Factory(DatabaseConnectionStrings connections, string folder, FakeClock clock, ILoggerProvider? log)
        : WebApplicationFactory<Program>
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            builder.UseSetting("ConnectionStrings:Program", connections.Program);
            builder.UseSetting("ConnectionStrings:Migrator", connections.Migrator);
            builder.UseSetting("data", folder);
            builder.UseSetting("Mail:Folder", Path.Combine(folder, "mail"));
            builder.ConfigureLogging(l =>
            {
                l.ClearProviders();
                if (log is not null)
                    l.AddProvider(new DiscreetLog(log));
            });
            builder.ConfigureTestServices(services => services.AddSingleton<IClock>(clock));
        }
    }
}
