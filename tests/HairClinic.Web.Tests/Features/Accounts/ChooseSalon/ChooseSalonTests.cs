using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Settings.EditSalon;

namespace HairClinic.Web.Tests.Features.Accounts.ChooseSalon;

public sealed class ChooseSalonTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/practice/people", "/practice/people")]
    [InlineData("//elsewhere.example/", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("https://elsewhere.example/", "/")]
    public async Task The_screen_speaks_of_the_salon_chosen_and_comes_back_to_this_site_only(string returnTo, string to)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        // By name, Canal Side is the first.
        Assert.Equal("Canal Side", await CurrentSalonAsync(browser));

        EmptySite.LeadsTo(to, await ChooseAsync(browser, site.Salon.Id, returnTo));

        Assert.Equal("Elm Row", await CurrentSalonAsync(browser));
        Assert.Equal("Elm Row", await CurrentSalonAsync(await site.SignInAsync(StaffRole.Owner)));
    }

    [Fact]
    public async Task A_salon_opened_later_does_not_turn_the_screen_to_itself_by_its_name()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var owner = await site.SignInAsync(StaffRole.Owner);
        Assert.Equal("Canal Side", await CurrentSalonAsync(owner));

        var owning = await site.DoAsync(
            async (_, db) =>
            {
                var person = await db.People.SingleAsync(p => p.Role == StaffRole.Owner, Cancel);
                return new PersonActor(site.PracticeId, person.Id, person.Role, [site.Other.Id, site.Salon.Id], site.Other.Id);
            }
        );
        var abbey = new Slice.Input
        {
            Name = "Abbey Steps",
            Zone = "Europe/London",
            Currency = "GBP",
        };
        await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunAsAsync(owning, services => services.GetRequiredService<Slice>().SaveAsync(Guid.CreateVersion7(), abbey, Cancel));

        Assert.Equal("Canal Side", await CurrentSalonAsync(await site.SignInAsync(StaffRole.Owner)));
    }

    [Fact]
    public async Task A_salon_that_is_not_theirs_is_not_there()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.Manager]);
        var manager = await site.SignInAsync(StaffRole.Manager);

        Assert.Equal(HttpStatusCode.NotFound, (await ChooseAsync(manager, site.Other.Id, "/")).StatusCode);
    }

    [Fact]
    public async Task A_choice_without_the_page_s_own_token_is_refused()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        var form = new Dictionary<string, string> { ["salon"] = site.Salon.Id.ToString(), ["returnTo"] = "/" };

        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await browser.PostAsync("/choose-salon", new FormUrlEncodedContent(form), Cancel)).StatusCode
        );
    }

    private static async Task<HttpResponseMessage> ChooseAsync(HttpClient browser, Guid salon, string returnTo)
    {
        var page = new HtmlParser().ParseDocument(await browser.GetStringAsync("/practice/people", Cancel));
        var form = new Dictionary<string, string>
        {
            ["salon"] = salon.ToString(),
            ["returnTo"] = returnTo,
            ["__RequestVerificationToken"] = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!,
        };
        return await browser.PostAsync("/choose-salon", new FormUrlEncodedContent(form), Cancel);
    }

    private static async Task<string> CurrentSalonAsync(HttpClient browser)
    {
        var page = new HtmlParser().ParseDocument(await browser.GetStringAsync("/practice/people", Cancel));
        return page.QuerySelector(".salon summary strong")!.TextContent;
    }
}
