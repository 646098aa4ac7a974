using HairClinic.Web.Data;
using HairClinic.Web.Data.EmbeddedPostgres;
using HairClinic.Web.Shell.Logs;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using NodaTime.Testing;

namespace HairClinic.Browser.Tests;

/// <summary>The whole program on a real port, on a PostgreSQL of its own, at a time the story chooses.</summary>
public sealed class Site : IAsyncDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("hairclinic-site-");
    private readonly Factory factory;
    private readonly EmbeddedServer server;

    private Site(DirectoryInfo folder, EmbeddedServer server, Instant now, ILoggerProvider? log)
    {
        this.folder = folder;
        this.server = server;
        Clock = new FakeClock(now);
        factory = new Factory(server.Connections, folder.FullName, Clock, log);
        factory.UseKestrel(k => k.Listen(System.Net.IPAddress.Loopback, 0));
        factory.StartServer();
        Address = factory.ClientOptions.BaseAddress;
    }

    public Uri Address { get; }

    public FakeClock Clock { get; }

    public IServiceProvider Services => factory.Services;

    public string MailFolder => Path.Combine(folder.FullName, "mail");

    /// <summary>A site on an empty database.</summary>
    /// <param name="log">Where its log is kept; nowhere without.</param>
    public static async Task<Site> OpenAsync(Instant now, ILoggerProvider? log = null)
    {
        var folder = Directory.CreateTempSubdirectory("hairclinic-site-");
        // The server runs as an unprivileged user and must be able to walk here.
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        var server = await EmbeddedServer.StartAsync(new(folder.FullName) { Durable = false }, NullLogger.Instance);
        return new Site(folder, server, now, log);
    }

    public async ValueTask DisposeAsync()
    {
        await factory.DisposeAsync();
        await server.DisposeAsync();
        folder.Delete(recursive: true);
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
