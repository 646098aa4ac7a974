using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Features.Accounts.RefreshSignIn;

public sealed class RefreshSignInTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_salon_opened_since_signing_in_is_there_after_looking_again()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                site.PracticeId,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    db.Salons.Add(new Salon(Guid.CreateVersion7(), "Harbour", "Europe/London", "GBP"));
                    return await db.SaveChangesAsync(Cancel);
                }
            );
        Assert.DoesNotContain("Harbour", await SalonsAsync(browser));

        EmptySite.LeadsTo("/practice/salons", await browser.GetAsync("/refresh-sign-in?returnTo=/practice/salons", Cancel));

        Assert.Contains("Harbour", await SalonsAsync(browser));
    }

    [Fact]
    public async Task It_leads_nobody_elsewhere()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);

        EmptySite.LeadsTo("/", await browser.GetAsync("/refresh-sign-in?returnTo=//elsewhere.example", Cancel));
    }

    [Fact]
    public async Task A_sign_in_that_was_ended_a_moment_ago_leads_to_sign_in_and_not_round_in_circles()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        // Looked up now, and by itself not again for a minute.
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/due", Cancel)).StatusCode);

        await site.DoAsync(
            async (_, db) =>
            {
                var owner = await db.People.Select(p => p.Id).SingleAsync(Cancel);
                await PersonSessions.EndAllAsync(db, owner, site.Clock.GetCurrentInstant(), Cancel);
                return await db.SaveChangesAsync(Cancel);
            }
        );

        EmptySite.LeadsTo("/refresh-sign-in?returnTo=%2Fdue", await browser.GetAsync("/due", Cancel));
        EmptySite.LeadsTo("/sign-in?ReturnUrl=%2Fdue", await browser.GetAsync("/refresh-sign-in?returnTo=%2Fdue", Cancel));
        EmptySite.LeadsTo("/sign-in?ReturnUrl=%2Fdue", await browser.GetAsync("/due", Cancel));
    }

    private static async Task<IEnumerable<string>> SalonsAsync(HttpClient browser)
    {
        var page = new HtmlParser().ParseDocument(await browser.GetStringAsync("/practice/people", Cancel));
        return page.QuerySelectorAll(".salon button").Select(b => b.TextContent);
    }
}
