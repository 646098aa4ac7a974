using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using HairClinic.Web.Tests.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using NodaTime;
using NodaTime.Testing;

namespace HairClinic.Web.Tests.Features.Accounts;

/// <summary>A site with a practice of two salons in which everyone can sign in with the same password.</summary>
public sealed class AccountsSite(EmptySite site, FakeClock clock) : IAsyncDisposable
{
    public const string Password = "long lavender evenings";

    public Guid PracticeId { get; } = Guid.CreateVersion7();

    public Salon Salon { get; private set; } = null!;

    public Salon Other { get; private set; } = null!;

    public IServiceProvider Services => site.Services;

    /// <summary>Where a test moves the time.</summary>
    public FakeClock Clock { get; } = clock;

    /// <param name="with">Services of the test's own.</param>
    public static async Task<AccountsSite> OpenAsync(
        PgServer server,
        bool guideFinished = true,
        Action<IServiceCollection>? with = null,
        params StaffRole[] roles
    )
    {
        var clock = new FakeClock(TestClinic.UsualNow);
        // Letters lie where they are written: nobody sends them while a test reads them.
        var quiet = await EmptySite.OpenAsync(
            server,
            site =>
            {
                SentFrom.Believe(site);
                site.ConfigureTestServices(services =>
                {
                    services.RemoveAll<IHostedService>();
                    with?.Invoke(services);
                });
            },
            clock
        );
        var open = new AccountsSite(quiet, clock);
        await open
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(open.PracticeId, "test", services => open.LayAsync(services, guideFinished, roles));
        return open;
    }

    public HttpClient Browser(string origin = "https://localhost") => site.Browser(origin);

    public T Service<T>()
        where T : notnull => Services.GetRequiredService<T>();

    /// <summary>Sends a form of a page to an endpoint, with the page's own token.</summary>
    public static async Task<HttpResponseMessage> PostAsync(
        HttpClient browser,
        string page,
        string endpoint,
        IReadOnlyDictionary<string, string>? fields = null
    )
    {
        var cancel = TestContext.Current.CancellationToken;
        var document = new HtmlParser().ParseDocument(await browser.GetStringAsync(page, cancel));
        var form = new Dictionary<string, string>(fields ?? new Dictionary<string, string>())
        {
            ["__RequestVerificationToken"] = document.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!,
        };
        return await browser.PostAsync(endpoint, new FormUrlEncodedContent(form), cancel);
    }

    /// <summary>Letters that wait to be sent.</summary>
    public Task<List<string>> LettersAsync() =>
        DoAsync((_, db) => db.WorkItems.Where(w => w.Kind == WorkKind.SendMail).OrderBy(w => w.AskedAt).Select(w => w.Body).ToListAsync());

    /// <summary>Somebody of that role at a device of their own.</summary>
    public async Task<HttpClient> SignInAsync(StaffRole role, string password = Password)
    {
        var browser = Browser();
        var answers = new Dictionary<string, string> { ["Input.Name"] = role.ToString(), ["Input.Password"] = password };
        var answer = await EmptySite.SendAsync(browser, "/sign-in", answers);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    /// <summary>Does something past the pages, in the practice's own book.</summary>
    public Task<T> DoAsync<T>(Func<IServiceProvider, ClinicDb, Task<T>> work) =>
        Services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                PracticeId,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(services, db);
                }
            );

    /// <summary>The owner, whose codes app is asked for.</summary>
    public async Task<HttpClient> SignInWithAsync(CodesApp app, string code)
    {
        var browser = Browser();
        EmptySite.LeadsTo("/", await app.SignInAsync(browser, code));
        return browser;
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    private async Task<bool> LayAsync(IServiceProvider services, bool guideFinished, StaffRole[] roles)
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        db.Practices.Add(new PracticeRow(PracticeId));
        var scene = new Scene(db, Instant.FromUtc(2027, 2, 3, 10, 0));
        if (guideFinished)
            scene.AddPractice("Practice under test");
        else
            db.PracticeSettings.Add(new PracticeSettings(Guid.CreateVersion7(), "Practice under test", "GB", "en-GB"));
        Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        Other = scene.OpenSalon("Canal Side", "Europe/London", "GBP", chairs: 1);
        var people = roles.Select(role => scene.Hire(role.ToString(), role, Salon)).ToList();
        await db.SaveChangesAsync(cancel);
        var users = services.GetRequiredService<UserManager<AppUser>>();
        foreach (var person in people)
        {
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                PracticeId = PracticeId,
                PersonId = person.Id,
                UserName = person.Name,
                Email = $"{person.Name}@post.test",
                LockoutEnabled = true,
            };
            Assert.True((await users.CreateAsync(user, Password)).Succeeded);
        }
        return true;
    }
}
