using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.EmbeddedPostgres;
using HairClinic.Web;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using NodaTime;
using Npgsql;
using SystemClock = NodaTime.SystemClock;

namespace HairClinic.BookingDrill;

/// <summary>One salon in a database of the drill's own, and the program's own parts to write into it.</summary>
internal sealed class Clinic : IAsyncDisposable
{
    public const int Chairs = 6;
    public const int Stylists = 8;

    /// <summary>Clients whom desk and own page book alike, and as many whom nobody but they themselves book.</summary>
    public const int Of = 16;

    private readonly EmbeddedServer _server;
    private readonly WebApplication _parts;

    private Clinic(string folder, EmbeddedServer server, WebApplication parts)
    {
        (Folder, _server, _parts) = (folder, server, parts);
        Sql = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(server.Administrator) { Database = "hairclinic", MaxPoolSize = 8 }.ConnectionString
        );
    }

    public string Folder { get; }

    /// <summary>The superuser: the checks look past the fence.</summary>
    public NpgsqlDataSource Sql { get; }

    public Guid PracticeId { get; } = Guid.CreateVersion7();

    public Salon Salon { get; private set; } = null!;

    public Actor Desk { get; private set; } = null!;

    public IReadOnlyList<Chair> AllChairs { get; private set; } = [];

    public IReadOnlyList<Person> People { get; private set; } = [];

    public IReadOnlyList<ServiceKind> Services { get; private set; } = [];

    public IReadOnlyList<Client> Shared { get; private set; } = [];

    public IReadOnlyList<Client> Alone { get; private set; } = [];

    /// <summary>A Cookie header for each client, as the program itself would have given it.</summary>
    public IReadOnlyDictionary<Guid, string> Cookies { get; private set; } = new Dictionary<Guid, string>();

    public IReadOnlyDictionary<string, string> Environment =>
        new Dictionary<string, string>
        {
            ["ConnectionStrings__Program"] = _server.AsProgram,
            ["ConnectionStrings__Migrator"] = _server.AsMigrator,
            ["Keys__File"] = Path.Combine(Folder, "keys", "master.json"),
            ["Files__Folder"] = Path.Combine(Folder, "files"),
        };

    public int Postmaster => int.Parse(File.ReadLines(Path.Combine(Folder, "data", "database", "postmaster.pid")).First());

    public static async Task<Clinic> OpenAsync(string folder)
    {
        var server = await EmbeddedServer.StartAsync(
            new(Path.Combine(folder, "data")) { FirstPause = TimeSpan.FromSeconds(0.2), LongestPause = TimeSpan.FromSeconds(2) },
            NullLogger.Instance
        );
        string[] settings =
        [
            "--applicationName",
            "HairClinic.Web",
            // Not the settings that lie beside the program: nothing is logged here.
            "--contentRoot",
            folder,
            $"--ConnectionStrings:Program={server.AsProgram}",
            $"--ConnectionStrings:Migrator={server.AsMigrator}",
            $"--Keys:File={Path.Combine(folder, "keys", "master.json")}",
            $"--Files:Folder={Path.Combine(folder, "files")}",
            "--Logging:LogLevel:Default=None",
        ];
        var clinic = new Clinic(folder, server, Web.Clinic.Build(settings));
        await clinic._parts.Services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
        clinic._parts.Services.GetRequiredService<MasterKeys>().LoadAndCheck();
        await clinic.LayAsync();
        return clinic;
    }

    public Task<T> UseAsync<TSlice, T>(Actor actor, Func<TSlice, Task<T>> call)
        where TSlice : notnull =>
        _parts.Services.GetRequiredService<PracticeJobRunner>().RunAsAsync(actor, services => call(services.GetRequiredService<TSlice>()));

    public Actor Acting(Client client) => new ClientActor(PracticeId, client.Id);

    public async ValueTask DisposeAsync()
    {
        await Sql.DisposeAsync();
        await _parts.DisposeAsync();
        await _server.DisposeAsync();
    }

    private async Task LayAsync()
    {
        await using (var scope = _parts.Services.CreateAsyncScope())
        {
            await using var unfenced = scope.ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
            unfenced.Practices.Add(new PracticeRow(PracticeId));
            await unfenced.SaveChangesAsync();
        }
        var scheme = _parts.Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(AccountsSetup.ClientScheme);
        await _parts.Services.GetRequiredService<PracticeJobRunner>().RunJobAsync(PracticeId, "lay", Lay);

        async Task<bool> Lay(IServiceProvider scope)
        {
            await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
            var now = SystemClock.Instance.GetCurrentInstant();
            var scene = new Scene(db, now).AddPractice("Practice of the drill");
            Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", Chairs);
            // A service during which the client waits elsewhere, so that chairs are shared within a visit.
            var elsewhere = new ServiceKind(Guid.CreateVersion7(), "Colour with a walk", ServicePurpose.WashAndStyle);
            elsewhere.SetSteps([
                (Guid.CreateVersion7(), SegmentKind.HandsOn, 30),
                (Guid.CreateVersion7(), SegmentKind.ChairFree, 60),
                (Guid.CreateVersion7(), SegmentKind.HandsOn, 30),
            ]);
            scene.Services.Add(elsewhere);
            db.ServiceKinds.Add(elsewhere);
            var desk = scene.Hire("Desk", StaffRole.FrontDesk, Salon);
            Desk = new PersonActor(PracticeId, desk.Id, desk.Role, [Salon.Id], Salon.Id);
            People = [.. Enumerable.Range(1, Stylists).Select(i => scene.Hire($"Stylist {i}", StaffRole.Stylist, Salon))];
            var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "L1");
            var kind = scene.AddUnitKind("Everyday", "French lace", "Workshop North");
            Shared = [.. Enumerable.Range(1, Of).Select(i => Welcome($"S-{i}"))];
            Alone = [.. Enumerable.Range(1, Of).Select(i => Welcome($"A-{i}"))];
            (AllChairs, Services) = ([.. scene.Chairs], [.. scene.Services.Where(s => s.OfferedToClients)]);
            Cookies = Shared.Concat(Alone).ToDictionary(c => c.Id, c => Cookie(db, c, now));
            await scene.SaveAsync();
            return true;

            Client Welcome(string code)
            {
                var client = scene.AddClient(code, $"Client {code}", Salon, email: $"{code}@example.test");
                var on = Salon.DayOf(now).PlusDays(-20);
                scene.AddBond(client, scene.AddUnit(client, kind, on.PlusDays(-20)), on, adhesive, now - Duration.FromDays(20));
                return client;
            }
        }

        string Cookie(ClinicDb db, Client client, Instant now)
        {
            var signIn = new ClientSignIn(Guid.NewGuid(), client.Id, client.Email!, now);
            db.ClientSignIns.Add(signIn);
            var ticket = new AuthenticationTicket(
                ClientCookie.Principal(
                    new ActiveClientSignIn(new ClientActor(PracticeId, client.Id, signIn.Id), Household: false, OpensAll: true)
                ),
                new AuthenticationProperties
                {
                    IssuedUtc = now.ToDateTimeOffset(),
                    ExpiresUtc = now.ToDateTimeOffset().AddDays(30),
                    IsPersistent = true,
                },
                AccountsSetup.ClientScheme
            );
            return $"{scheme.Cookie.Name}={scheme.TicketDataFormat.Protect(ticket)}";
        }
    }
}
