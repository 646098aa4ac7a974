using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace HairClinic.Web.Tests.Keys;

/// <summary>A database of its own and a key file of its own; the program can be started on it again and again.</summary>
internal sealed class KeySite(PgServer server) : IDisposable
{
    private readonly string _name = $"keys_{Guid.NewGuid():N}";
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("hairclinic-keys-");
    private bool _made;

    public string File => Path.Combine(_folder.FullName, "outside", "master.json");

    public string Program => In(server.Connections.Program);

    public string Migrator => In(server.Connections.Migrator!);

    /// <summary>The same database as a superuser, whom nothing holds back.</summary>
    public string Administrator => In(server.Administrator);

    public async Task<ServiceProvider> StartAsync()
    {
        if (!_made)
            await Sql.AskAsync(server.Administrator, $"create database {_name} owner hairclinic_migrator template template0");
        _made = true;
        var services = new ServiceCollection();
        services.AddSingleton<IConfiguration>(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    new Dictionary<string, string?>
                    {
                        ["ConnectionStrings:Program"] = Program,
                        ["ConnectionStrings:Migrator"] = Migrator,
                        ["Keys:File"] = File,
                    }
                )
                .Build()
        );
        services.AddLogging();
        services.AddClinic();
        var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<DatabaseLifetime>().OpenAsync(TestContext.Current.CancellationToken);
        return provider;
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private string In(string connection) =>
        new NpgsqlConnectionStringBuilder(connection) { Database = _name, MaxPoolSize = 5 }.ConnectionString;
}
