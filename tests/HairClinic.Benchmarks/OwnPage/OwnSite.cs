using System.Diagnostics;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using NodaTime;
using Npgsql;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>
/// The whole program as it is served, in a process of its own on loopback, with a practice of clients who wear a unit, each
/// signed in by a cookie the program itself would have given.
/// </summary>
internal sealed class OwnSite : IAsyncDisposable
{
    private readonly Process _process;

    private readonly string _data;

    private OwnSite(Process process, string data, string address, IReadOnlyList<string> cookies) =>
        (_process, _data, Address, Cookies) = (process, data, address, cookies);

    /// <summary>What it has worked since it started.</summary>
    public Work Work => Work.Of(_process.Id, _data);

    public string Address { get; }

    /// <summary>A Cookie header for each client.</summary>
    public IReadOnlyList<string> Cookies { get; }

    public static async Task<OwnSite> OpenAsync(string data, int port, int clients)
    {
        // Laid by the program's own parts, before it is served: the folder has one master at a time.
        IReadOnlyList<string> cookies;
        await using (var app = Clinic.Build(["--applicationName", "HairClinic.Web", "--data", data, "--Logging:LogLevel:Default=Warning"]))
        {
            await app.Services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
            cookies = await LayAsync(app.Services, clients);
            // As the baseline does, and as a database left alone for a minute does by itself.
            await using var tidy = new NpgsqlConnection(app.Services.GetRequiredService<DatabaseLifetime>().Connections.Migrator);
            await tidy.OpenAsync();
            await using var command = new NpgsqlCommand("vacuum analyze", tidy);
            await command.ExecuteNonQueryAsync();
        }
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = await PublishedAsync(data + "-site"),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["DOTNET_ENVIRONMENT"] = "Production", ["Logging__LogLevel__Default"] = "Warning" },
        };
        foreach (var word in new[] { "HairClinic.Web.dll", "serve", "--data", data, "--urls", $"http://127.0.0.1:{port}" })
            start.ArgumentList.Add(word);
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, e) => Console.Error.WriteLine(e.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var address = $"http://127.0.0.1:{port}";
        await Wrk.WaitAsync(address + "/alive");
        return new OwnSite(process, data, address, cookies);
    }

    public async ValueTask DisposeAsync()
    {
        using var stop = Process.Start("kill", ["-TERM", _process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await _process.WaitForExitAsync(new CancellationTokenSource(TimeSpan.FromSeconds(20)).Token);
        _process.Dispose();
    }

    /// <summary>The site as it is released; <c>HAIRCLINIC_SITE</c> names a folder where it lies published already.</summary>
    private static async Task<string> PublishedAsync(string folder)
    {
        if (Environment.GetEnvironmentVariable("HAIRCLINIC_SITE") is { Length: > 0 } published)
            return published;
        var project = Path.GetFullPath(Path.Combine(Report.Folder, "../../../src/HairClinic.Web/HairClinic.Web.csproj"));
        using var publish = Process.Start("dotnet", ["publish", project, "-c", "Release", "-o", folder, "-v", "q", "--nologo"]);
        await publish.WaitForExitAsync();
        return folder;
    }

    private static async Task<IReadOnlyList<string>> LayAsync(IServiceProvider services, int clients)
    {
        var cookies = new List<string>(clients);
        var scheme = services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(AccountsSetup.ClientScheme);
        await NewPractice.LayAsync(services, Lay);
        return cookies;

        async Task Lay(Guid practice, IServiceProvider scope, ClinicDb db)
        {
            db.ChangeTracker.AutoDetectChangesEnabled = false;
            var now = NodaTime.SystemClock.Instance.GetCurrentInstant();
            var scene = new Scene(db, now).AddPractice("Many clients");
            var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
            var adhesive = scene.AddProduct("Adhesive under test", ProductKind.Adhesive, "water-based acrylic", "L1");
            var kind = scene.AddUnitKind("Everyday", "French lace", "Workshop North");
            var today = salon.DayOf(now);
            for (var i = 0; i < clients; i++)
            {
                var client = scene.AddClient($"C-{i}", $"Client number {i}", salon, email: $"c{i}@example.test");
                scene.AddBond(
                    client,
                    scene.AddUnit(client, kind, today.PlusDays(-60)),
                    today.PlusDays(-(i % 20)),
                    adhesive,
                    now - Duration.FromDays(i % 20)
                );
                var visit = new Visit(Guid.CreateVersion7(), client.Id, salon.Id, scene.ServiceWithPurpose(ServicePurpose.Rebond).Id);
                var rebond = scene.ServiceWithPurpose(ServicePurpose.Rebond);
                // Without a chair: there are not so many chairs.
                visit.PutAt(
                    rebond,
                    now + Duration.FromDays(1 + i % 20),
                    null,
                    null,
                    salon,
                    [.. rebond.Steps.Select(_ => Guid.CreateVersion7())]
                );
                db.Visits.Add(visit);
                var signIn = new ClientSignIn(Guid.NewGuid(), client.Id, client.Email!, now);
                db.ClientSignIns.Add(signIn);
                var principal = ClientCookie.Principal(
                    new ActiveClientSignIn(new ClientActor(practice, client.Id, signIn.Id), Household: false, OpensAll: true)
                );
                var ticket = new AuthenticationTicket(
                    principal,
                    new AuthenticationProperties
                    {
                        IssuedUtc = now.ToDateTimeOffset(),
                        ExpiresUtc = now.ToDateTimeOffset().AddDays(30),
                        IsPersistent = true,
                    },
                    AccountsSetup.ClientScheme
                );
                cookies.Add($"{scheme.Cookie.Name}={scheme.TicketDataFormat.Protect(ticket)}");
            }
            db.ChangeTracker.DetectChanges();
            await scene.SaveAsync();
        }
    }
}
