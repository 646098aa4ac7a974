using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Practices;
using HairClinic.Web.Tests.Features.Practices.FirstRun;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts;

/// <summary>A site with a practice of two salons in which everyone can sign in with the same password.</summary>
public sealed class AccountsSite(EmptySite site) : IAsyncDisposable
{
    public const string Password = "long lavender evenings";

    public Guid PracticeId { get; } = Guid.CreateVersion7();

    public Salon Salon { get; private set; } = null!;

    public Salon Other { get; private set; } = null!;

    public IServiceProvider Services => site.Services;

    public static async Task<AccountsSite> OpenAsync(PgServer server, bool guideFinished = true, params StaffRole[] roles)
    {
        var open = new AccountsSite(await EmptySite.OpenAsync(server));
        await open
            .Services.GetRequiredService<PracticeJobs>()
            .RunAsync(open.PracticeId, "test", services => open.LayAsync(services, guideFinished, roles));
        return open;
    }

    public HttpClient Browser() => site.Browser();

    /// <summary>Somebody of that role at a device of their own.</summary>
    public async Task<HttpClient> SignInAsync(StaffRole role, string password = Password)
    {
        var browser = Browser();
        var answers = new Dictionary<string, string> { ["Input.Name"] = role.ToString(), ["Input.Password"] = password };
        var answer = await EmptySite.SendAsync(browser, "/sign-in", answers);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
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
            scene.LayPractice("Practice under test");
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
            };
            Assert.True((await users.CreateAsync(user, Password)).Succeeded);
        }
        return true;
    }
}
