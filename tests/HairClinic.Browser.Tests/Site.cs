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
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("hairclinic-site-");
    private readonly ILoggerProvider? log;
    private Factory factory;
    private int starts;
    private readonly EmbeddedServer server;
    private readonly List<IBrowserContext> devices = [];

    private Site(DirectoryInfo folder, EmbeddedServer server, Instant now, ILoggerProvider? log)
    {
        this.folder = folder;
        this.server = server;
        this.log = log;
        Clock = new FakeClock(now);
        factory = Start(port: 0);
        Address = factory.ClientOptions.BaseAddress;
    }

    public Uri Address { get; }

    public FakeClock Clock { get; }

    public IServiceProvider Services => factory.Services;

    public string MailFolder => Path.Combine(folder.FullName, "mail");

    /// <summary>Somebody's device, to be put away before the program ends: an open page comes back at once and has it wait.</summary>
    public void Use(IBrowserContext device) => devices.Add(device);

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
        await factory.DisposeAsync();
        factory = Start(Address.Port);
    }

    /// <summary>Until it is disposed of, the database can be reached by nobody, and whoever was connected is cut off.</summary>
    public async Task<IAsyncDisposable> LoseDatabaseAsync()
    {
        var to = new NpgsqlConnectionStringBuilder(server.Administrator);
        var socket = Path.Combine(to.Host!, $".s.PGSQL.{to.Port}");
        await using var connection = new NpgsqlConnection(server.Administrator + ";Pooling=false");
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
            .GetRequiredService<PracticeJobs>()
            .RunAsync(
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
        foreach (var device in devices)
            await device.CloseAsync();
        await factory.DisposeAsync();
        await server.DisposeAsync();
        return folder;
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
        var anew = $";Application Name=site {++starts}";
        var made = new Factory(
            ClinicConnections.Of(server) with
            {
                Program = ClinicConnections.Of(server).Program + anew,
                Migrator = ClinicConnections.Of(server).Migrator + anew,
            },
            folder.FullName,
            Clock,
            log
        );
        made.UseKestrel(k => k.Listen(System.Net.IPAddress.Loopback, port));
        made.StartServer();
        return made;
    }

    private sealed class Back(Action back) : IAsyncDisposable
    {
        private bool done;

        public ValueTask DisposeAsync()
        {
            if (!done)
                back();
            done = true;
            return ValueTask.CompletedTask;
        }
    }

    private sealed class Factory(ClinicConnections connections, string folder, FakeClock clock, ILoggerProvider? log)
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
