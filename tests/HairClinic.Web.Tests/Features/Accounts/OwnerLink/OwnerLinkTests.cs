using System.Net;
using System.Text.RegularExpressions;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.CommandLine;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts.OwnerLink;

public sealed partial class OwnerLinkTests(PgServer server)
{
    private const string Fresh = "seven quiet orchards at noon";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_lone_owner_who_lost_the_password_sets_a_new_one_once_and_is_told()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.Manager]);
        var open = await site.SignInAsync(StaffRole.Owner);
        await LockAsync(site);

        var (rc, said, _) = await RunAsync(site, address: "https://book.example/");

        Assert.Equal(0, rc);
        Assert.Contains("https://book.example/set-password?for=", said, StringComparison.Ordinal);
        // Whoever sits at an open screen of theirs is out.
        Assert.Equal(HttpStatusCode.Redirect, (await open.GetAsync("/my-sign-in", Cancel)).StatusCode);
        Assert.Contains("Your password is set", await SetAsync(site, LinkIn(said)), StringComparison.Ordinal);
        await site.SignInAsync(StaffRole.Owner, Fresh);
        Assert.Contains("This link was used already", await SetAsync(site, LinkIn(said)), StringComparison.Ordinal);
        Assert.Contains(await site.LettersAsync(), l => l.Contains("command line", StringComparison.Ordinal));
        var note = await site.DoAsync((_, db) => db.AccessNotes.SingleAsync(n => n.Action == AccessAction.LetOwnerIn, Cancel));
        var owner = await site.DoAsync((_, db) => db.People.SingleAsync(p => p.Role == StaffRole.Owner, Cancel));
        Assert.Equal((AccessActorKind.Job, "command line", owner.Id), (note.ActorKind, note.Role, note.SubjectId));
    }

    [Fact]
    public async Task The_codes_app_stays_unless_it_is_lost_too()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));

        var (_, stays, _) = await RunAsync(site);
        Assert.Contains("The codes app stays", stays, StringComparison.Ordinal);
        await SetAsync(site, LinkIn(stays));
        EmptySite.LeadsTo("/sign-in-code?return=%2F", await SignInAsync(site));

        var (_, dropped, _) = await RunAsync(site, drop: true);
        await SetAsync(site, LinkIn(dropped));
        EmptySite.LeadsTo("/", await SignInAsync(site));
        Assert.Contains("taken off", dropped, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_hour_later_it_opens_nothing()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var lifespan = site.Service<IOptions<OwnerTokenProvider.Lifespan>>().Value;
        Assert.Equal(TimeSpan.FromHours(1), lifespan.TokenLifespan);
        var (_, said, _) = await RunAsync(site);

        // Tokens are dated by the machine's clock: instead of an hour passing, the hour is made to have passed.
        lifespan.TokenLifespan = TimeSpan.Zero;

        Assert.Contains("This link was used already, is older than", await SetAsync(site, LinkIn(said)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_said_whose_where_it_is_not_clear_and_nobody_but_an_owner_gets_one()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.Manager]);
        await site.DoAsync(
            async (_, db) =>
            {
                var manager = await db.People.SingleAsync(p => p.Role == StaffRole.Manager, Cancel);
                Assert.Equal((2, ""), await ShortAsync(site, "Manager"));
                manager.Edit(manager.Name, StaffRole.Owner);
                return await db.SaveChangesAsync(Cancel);
            }
        );

        var (rc, said, complaint) = await RunAsync(site);
        Assert.Equal((2, ""), (rc, said));
        Assert.Contains("Manager, Owner", complaint, StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync(site, name: " owner ")).Rc);
        Assert.Equal((2, ""), await ShortAsync(site, "Nobody"));
        Assert.Equal(1, await site.DoAsync((_, db) => db.AccessNotes.CountAsync(n => n.Action == AccessAction.LetOwnerIn, Cancel)));
    }

    [Fact]
    public async Task No_address_makes_one()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var routes = site.Service<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Select(e => e.RoutePattern.RawText ?? "");

        Assert.DoesNotContain(routes, r => r.Contains("owner-link", StringComparison.OrdinalIgnoreCase));
        var owner = await site.SignInAsync(StaffRole.Owner);
        Assert.Equal(HttpStatusCode.NotFound, (await owner.GetAsync("/owner-link", Cancel)).StatusCode);
    }

    private static async Task<(int Rc, string Said, string Complaint)> RunAsync(
        AccountsSite site,
        string? name = null,
        bool drop = false,
        string? address = null
    )
    {
        using var say = new StringWriter();
        using var complain = new StringWriter();
        var rc = await OwnerLinkVerb.RunAsync(site.Services, site.PracticeId, name, drop, address, say, complain);
        return (rc, say.ToString(), complain.ToString());
    }

    private static async Task<(int Rc, string Said)> ShortAsync(AccountsSite site, string name) =>
        await RunAsync(site, name) is var (rc, said, _) ? (rc, said) : default;

    private static async Task<string> SetAsync(AccountsSite site, string link)
    {
        var answers = new Dictionary<string, string> { ["Input.Password"] = Fresh, ["Input.Again"] = Fresh };
        return await (await EmptySite.SendAsync(site.Browser(), link, answers)).Content.ReadAsStringAsync(Cancel);
    }

    private static Task<HttpResponseMessage> SignInAsync(AccountsSite site) =>
        EmptySite.SendAsync(
            site.Browser(),
            "/sign-in",
            new Dictionary<string, string> { ["Input.Name"] = "Owner", ["Input.Password"] = Fresh }
        );

    /// <summary>As after too many wrong guesses.</summary>
    private static Task<int> LockAsync(AccountsSite site)
    {
        var until = (site.Clock.GetCurrentInstant() + Duration.FromHours(1)).ToDateTimeOffset();
        return site.DoAsync(
            (_, db) => db.Users.ExecuteUpdateAsync(set => set.SetProperty(u => u.LockoutEnd, (DateTimeOffset?)until), Cancel)
        );
    }

    private static string LinkIn(string said) => Link().Match(said).Value;

    [GeneratedRegex(@"/set-password\S+")]
    private static partial Regex Link();
}
