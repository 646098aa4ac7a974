using System.Net;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Language;
using HairClinic.Web.Shell;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Security;

/// <summary>The whole program over HTTP with two practices, one of them in two salons, and somebody of every kind.</summary>
public sealed class ClinicSite : IAsyncDisposable
{
    public const string Password = "long lavender evenings";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private readonly EmptySite _site;
    private readonly Guid _mine = Guid.CreateVersion7();
    private readonly Guid _theirs = Guid.CreateVersion7();
    private Uri? _address;

    private ClinicSite(EmptySite site) => _site = site;

    public IServiceProvider Services => _site.Services;

    public Guid PracticeId => _mine;

    public EmptySite Site => _site;

    /// <summary>The rows of the first practice's first salon, of its second, and of the other practice.</summary>
    public Place Here { get; private set; } = null!;

    public Place Elsewhere { get; private set; } = null!;

    public Place Foreign { get; private set; } = null!;

    /// <param name="listening">On a real port, where the server's own limits hold.</param>
    public static async Task<ClinicSite> OpenAsync(PgServer server, Action<IWebHostBuilder>? more = null, bool listening = false)
    {
        var site = new ClinicSite(await EmptySite.OpenAsync(server, more));
        if (listening)
        {
            site._site.UseKestrel(k => k.Listen(IPAddress.Loopback, 0));
            site._site.StartServer();
            site._address = site._site.ClientOptions.BaseAddress;
        }
        var jobs = site.Services.GetRequiredService<PracticeJobRunner>();
        await jobs.RunJobAsync(
            site._mine,
            "test",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                db.Practices.Add(new PracticeRow(site._mine));
                var scene = new Scene(db, SystemClock.Instance.GetCurrentInstant()).AddPractice("Practice under test");
                (site.Here, site.Elsewhere) = (Lay(scene, "Elm Row", "A"), Lay(scene, "Canal Side", "B"));
                await PhotographAsync(services, db, site.Here, site.Elsewhere);
                await scene.SaveAsync();
                await GiveAccountsAsync(services, site._mine, site.Here, site.Elsewhere);
                return true;
            }
        );
        await jobs.RunJobAsync(
            site._theirs,
            "test",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                db.Practices.Add(new PracticeRow(site._theirs));
                var scene = new Scene(db, SystemClock.Instance.GetCurrentInstant()).AddPractice("Somebody else's practice");
                site.Foreign = Lay(scene, "Far Quay", "Z");
                await PhotographAsync(services, db, site.Foreign);
                await scene.SaveAsync();
                await GiveAccountsAsync(services, site._theirs, site.Foreign);
                return true;
            }
        );
        return site;
    }

    public HttpClient Browser()
    {
        if (_address is null)
            return _site.Browser();
        var browser = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = _address };
        browser.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        return browser;
    }

    public async Task<HttpClient> SignInAsync(string name)
    {
        var browser = Browser();
        var answer = await TryAsync(browser, name, Password);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    public static Task<HttpResponseMessage> TryAsync(HttpClient browser, string name, string password) =>
        EmptySite.SendAsync(browser, "/sign-in", new Dictionary<string, string> { ["Input.Name"] = name, ["Input.Password"] = password });

    /// <summary>A client's browser, let in by a link of theirs.</summary>
    public async Task<HttpClient> OpenLinkAsync(Client client)
    {
        var browser = Browser();
        var answer = await EmptySite.SendAsync(browser, await LinkAsync(client), new Dictionary<string, string>());
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    public Task<string> LinkAsync(Client client) =>
        Services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                client.HomeSalonId == Foreign.Salon.Id ? _theirs : _mine,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    services
                        .GetRequiredService<SignInLinkStore>()
                        .AddLinkAndLetter(db, client.Id, (await db.Clients.SingleAsync(c => c.Id == client.Id, Cancel)).Email!);
                    var letter = WorkItemFactory.ReadBody<Letter>(db.ChangeTracker.Entries<WorkItem>().Single().Entity);
                    await db.SaveChangesAsync(Cancel);
                    return "/my-hair/" + letter.Text.Split("/my-hair/")[1].Split('\n')[0].Trim();
                }
            );

    /// <summary>Does something past the pages, in the first practice's book.</summary>
    public Task<T> InPracticeAsync<T>(Func<IServiceProvider, ClinicDb, Task<T>> work) =>
        Services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                _mine,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(services, db);
                }
            );

    /// <summary>Routes that open to a client only by an address that is confirmed.</summary>
    public IEnumerable<string> ConfirmedOnly() =>
        Services
            .GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<ConfirmedAddressOnlyAttribute>() is not null)
            .Select(e => "/" + e.RoutePattern.RawText!.TrimStart('/'));

    public ValueTask DisposeAsync() => _site.DisposeAsync();

    private static Place Lay(Scene scene, string salonName, string letter)
    {
        var salon = scene.OpenSalon(salonName, "Europe/London", "GBP", chairs: 2);
        var chair = scene.Chairs.Last();
        var staff = Enum.GetValues<StaffRole>().ToDictionary(role => role, role => scene.Hire($"{role} Of{letter}ville", role, salon));
        if (scene.Products.Count == 0)
            scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "L-1");
        if (scene.Kinds.Count == 0)
            scene.AddUnitKind($"Everyday {letter}", scene.Bases[0].Name, $"Workshop {letter}");
        staff[StaffRole.Trainee].SetSkills([.. scene.Services.Select(s => (Guid.CreateVersion7(), s.Id))]);
        var own = Client("One", StaffRole.Trainee, hour: 9);
        var mate = Client("Two", StaffRole.Stylist, hour: 14);
        return new Place(salon, staff, own, mate, scene.Bases[0].Id, scene.HoldWindows[0].Id, scene.Workshops[0].Id)
        {
            Service = scene.Services[0].Id,
            Product = scene.Products[0].Id,
            Kind = scene.Kinds[0].Id,
            Order = Order(),
        };

        Guest Client(string ordinal, StaffRole with, int hour)
        {
            var code = $"{letter}{ordinal}-7731".ToUpperInvariant();
            var client = scene.AddClient(
                code,
                $"Quill{letter}{ordinal} Marchbanks",
                salon,
                PhoneOf(letter, hour),
                $"quill{letter}{ordinal}@example.test"
            );
            var tomorrow = scene.Now.InUtc().Date.PlusDays(1);
            var visit = scene.Book(
                client,
                scene.ServiceWithPurpose(ServicePurpose.Rebond),
                chair,
                staff[with],
                (tomorrow + new LocalTime(hour, 0)).InUtc().ToInstant()
            );
            var unit = scene.AddUnit(client, scene.Kinds[0], tomorrow.PlusDays(-60));
            scene.AddBond(client, unit, tomorrow.PlusDays(-28), scene.Products[0]);
            return new Guest(client, visit, Guid.CreateVersion7()) { Unit = unit.Id };
        }

        Guid Order()
        {
            var today = salon.DayOf(scene.Now);
            var unit = new HairSystem(Guid.CreateVersion7(), $"{letter}-ordered", own.Client.Id, scene.Kinds[0].Id, today);
            var order = new WorkshopOrder(Guid.CreateVersion7(), $"{letter}-1", scene.Workshops[0].Id, salon.Id, today, "GBP");
            order.Send([(unit, 60_000)], Guid.CreateVersion7, new UnitStepEntry(Guid.Empty, today, scene.Now, By: null));
            scene.Db.AddRange(unit, order);
            return order.Id;
        }
    }

    // Ofcom keeps these numbers for drama: 020 7946 0000 to 0999.
    private static string PhoneOf(string letter, int hour) => $"+44 20 7946 0{letter[0] % 10}{hour:00}";

    private static async Task PhotographAsync(IServiceProvider services, ClinicDb db, params Place[] places)
    {
        await db.SaveChangesAsync(Cancel);
        foreach (var guest in places.SelectMany(p => new[] { p.Own, p.Mate }))
        {
            var file = await services
                .GetRequiredService<PhotoStore>()
                .StoreFilesAsync(db, guest.Client.Id, new PhotoCompressor.Pressed([1, 2, 3], [4, 5], 10, 10), Cancel);
            var now = SystemClock.Instance.GetCurrentInstant();
            var photo = new Photo(guest.Photo, guest.Client.Id, PhotoKind.Before, now.InUtc().Date, now.InUtc().Date, file, by: null, now);
            photo.SetShared(true);
            db.Photos.Add(photo);
        }
    }

    private static async Task GiveAccountsAsync(IServiceProvider services, Guid practice, params Place[] places)
    {
        var users = services.GetRequiredService<UserManager<AppUser>>();
        foreach (var person in places.SelectMany(p => p.Staff.Values))
        {
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                PracticeId = practice,
                PersonId = person.Id,
                UserName = NameOf(person),
            };
            Assert.True((await users.CreateAsync(user, Password)).Succeeded);
        }
    }

    public static string NameOf(Person person) => person.Name.Replace(" ", ".", StringComparison.Ordinal);

    /// <param name="Photo">One that is shared with them.</param>
    public sealed record Guest(Client Client, Visit Visit, Guid Photo)
    {
        /// <summary>On their head.</summary>
        public Guid Unit { get; init; }
    }

    /// <param name="Own">A client with a visit to the trainee.</param>
    /// <param name="Mate">A client with a visit to the stylist only.</param>
    public sealed record Place(
        Salon Salon,
        IReadOnlyDictionary<StaffRole, Person> Staff,
        Guest Own,
        Guest Mate,
        Guid Base,
        Guid HoldWindow,
        Guid Workshop
    )
    {
        public Guid Service { get; init; }
        public Guid Product { get; init; }
        public Guid Kind { get; init; }
        public Guid Order { get; init; }

        /// <summary>Words that must not stand on anybody's page who may not see these clients.</summary>
        public IEnumerable<string> Secrets => Words(Own).Concat(Words(Mate));

        public static IEnumerable<string> Words(Guest guest) =>
            [guest.Client.Name, guest.Client.Code, guest.Client.Email!, guest.Client.Phone!];
    }
}
