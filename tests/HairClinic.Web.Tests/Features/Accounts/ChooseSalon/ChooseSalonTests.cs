using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Practices.FirstRun;

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
