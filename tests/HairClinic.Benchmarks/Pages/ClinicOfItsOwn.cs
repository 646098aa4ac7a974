using HairClinic.EmbeddedPostgres;
using HairClinic.Web;
using HairClinic.Web.Data;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace HairClinic.Benchmarks.Pages;

/// <summary>The whole program on a database of its own that nothing outlives; it is not started.</summary>
internal static class ClinicOfItsOwn
{
    public static async Task UseAsync(string name, Func<WebApplication, EmbeddedServer, Task> use)
    {
        var folder = Directory.CreateTempSubdirectory($"hairclinic-{name}-");
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        try
        {
            await using var server = await EmbeddedServer.StartAsync(
                new(Path.Combine(folder.FullName, "db")) { Durable = false },
                NullLogger.Instance
            );
            await using var app = Clinic.Build([
                "--applicationName=HairClinic.Web",
                $"--data={folder.FullName}",
                $"--ConnectionStrings:Program={server.AsProgram}",
                $"--ConnectionStrings:Migrator={server.AsMigrator}",
                "--urls=http://127.0.0.1:0",
                "--Logging:LogLevel:Default=Warning",
            ]);
            await app.Services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
            await use(app, server);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
