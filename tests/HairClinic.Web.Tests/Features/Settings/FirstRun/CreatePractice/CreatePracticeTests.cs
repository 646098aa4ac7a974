using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Features.Settings;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Settings.CreatePractice;

namespace HairClinic.Web.Tests.Features.Settings.FirstRun.CreatePractice;

public sealed class CreatePracticeTests(PgServer server)
{
    private const string Password = "long lavender evenings";

    private static readonly Dictionary<string, string> Answers = new()
    {
        ["Input.PracticeName"] = "Practice on trial",
        ["Input.OwnerName"] = "Ottilie Vane",
        ["Input.SignInName"] = "ottilie@practice.example",
        ["Input.Password"] = Password,
    };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/")]
    [InlineData("/sign-in")]
    [InlineData("/practice/overview")]
    [InlineData("/my-hair")]
    [InlineData("/no/such/page")]
    public async Task While_nobody_practises_every_page_leads_to_the_guide(string page)
    {
        await using var site = await EmptySite.OpenAsync(server);

        EmptySite.LeadsTo(FirstRunGate.Welcome, await site.Browser().GetAsync(page, Cancel));
    }

    [Fact]
    public async Task Without_the_code_on_the_console_nobody_sets_anything_up()
    {
        await using var site = await EmptySite.OpenAsync(server);
        var browser = site.Browser();

        Assert.DoesNotContain("Input.Password", await browser.GetStringAsync(FirstRunGate.Welcome, Cancel), StringComparison.Ordinal);
        var wrong = await browser.GetStringAsync($"{FirstRunGate.Welcome}?code=guessed", Cancel);
        Assert.Contains("This is not the code on the console.", wrong, StringComparison.Ordinal);
        Assert.DoesNotContain("Input.Password", wrong, StringComparison.Ordinal);
        var forged = new Dictionary<string, string>(Answers) { ["Input.Code"] = "guessed" };
        var answer = await EmptySite.SendAsync(browser, $"{FirstRunGate.Welcome}?code={site.Code}", forged);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Empty(await PracticesAsync(site));
    }

    [Fact]
    public async Task The_first_owner_sets_the_practice_up_is_signed_in_and_is_led_on_and_nobody_comes_after()
    {
        await using var site = await EmptySite.OpenAsync(server);
        var browser = site.Browser();

        EmptySite.LeadsTo(
            "/first-run/first-salon",
            await EmptySite.SendAsync(browser, $"{FirstRunGate.Welcome}?code={site.Code}", Answers)
        );

        var practice = Assert.Single(await PracticesAsync(site));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/first-run/first-salon", Cancel)).StatusCode);
        EmptySite.LeadsTo("/first-run/first-salon", await browser.GetAsync("/", Cancel));
        EmptySite.LeadsTo("/", await browser.GetAsync($"{FirstRunGate.Welcome}?code={site.Code}", Cancel));
        EmptySite.LeadsTo("/sign-in", await site.Browser().GetAsync("/", Cancel));
        var owner = await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(practice, "test", services => OwnerAsync(services));
        Assert.Equal(("Ottilie Vane", StaffRole.Owner, "ottilie@practice.example"), owner);
        // An address typed as the name is where letters about the account go.
        var page = await browser.GetStringAsync("/my-sign-in", Cancel);
        Assert.DoesNotContain("nobody is told when something here is changed", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_tap_sent_twice_makes_one_practice()
    {
        await using var site = await EmptySite.OpenAsync(server);
        var input = Input(site);

        await SaveAsync(site, input);
        await SaveAsync(site, input);

        Assert.Equal([input.Key], await PracticesAsync(site));
    }

    [Fact]
    public async Task Of_two_first_owners_at_the_same_moment_one_is_told()
    {
        await using var site = await EmptySite.OpenAsync(server);
        _ = site.Code;

        var told = await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => Record.ExceptionAsync(() => SaveAsync(site, Input(site))).AsTask())
        );

        Assert.Single(told, t => t is null);
        Assert.Equal(3, told.OfType<Refusal>().Count());
        Assert.Single(await PracticesAsync(site));
    }

    [Fact]
    public void A_short_password_and_a_name_with_blanks_are_told()
    {
        var input = new Slice.Input
        {
            PracticeName = "P",
            OwnerName = "O",
            SignInName = "two words",
            Password = "tooshort",
        };

        Assert.Equal(
            [nameof(Slice.Input.SignInName), nameof(Slice.Input.Password)],
            new CreatePracticeRules().Validate(input).Errors.Select(e => e.PropertyName)
        );
    }

    private static Slice.Input Input(EmptySite site) =>
        new()
        {
            Key = Guid.CreateVersion7(),
            Code = site.Code,
            PracticeName = "Practice on trial",
            OwnerName = "Ottilie Vane",
            SignInName = "ottilie@practice.example",
            Password = Password,
        };

    // Signing in needs a request; a bare one does.
    private static async Task SaveAsync(EmptySite site, Slice.Input input)
    {
        await using var scope = site.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<SignInManager<AppUser>>().Context = new Microsoft.AspNetCore.Http.DefaultHttpContext
        {
            RequestServices = scope.ServiceProvider,
        };
        await scope.ServiceProvider.GetRequiredService<Slice>().SaveAsync(input, Cancel);
    }

    private static Task<IReadOnlyList<Guid>> PracticesAsync(EmptySite site) =>
        site.Services.GetRequiredService<PracticeJobRunner>().PracticeIdsAsync(Cancel);

    private static async Task<(string Name, StaffRole Role, string SignInName)> OwnerAsync(IServiceProvider services)
    {
        await using ClinicDb db = services.GetRequiredService<ClinicDbFactory>().Open();
        var person = await db.People.SingleAsync(Cancel);
        return (person.Name, person.Role, (await db.Users.SingleAsync(u => u.PersonId == person.Id, Cancel)).UserName!);
    }
}
