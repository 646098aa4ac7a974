using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;

namespace HairClinic.Web.Tests.Security;

[Collection(LookedAtSite.Name)]
public sealed class RedirectTests(LookedAtSite looked)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("https://elsewhere.example/due")]
    [InlineData("javascript:alert(1)")]
    [InlineData("/\t/elsewhere.example")]
    [InlineData("\\\\elsewhere.example")]
    [InlineData(" //elsewhere.example")]
    [InlineData("/%0d%0aLocation:https://elsewhere.example")]
    public async Task No_link_of_ours_leads_away_from_this_site(string wanted)
    {
        var owner = ClinicSite.NameOf(looked.Site.Here.Staff[StaffRole.Manager]);
        var browser = looked.Site.Browser();
        var answers = new Dictionary<string, string> { ["Input.Name"] = owner, ["Input.Password"] = ClinicSite.Password };

        using var signedIn = await EmptySite.SendAsync(browser, $"/sign-in?ReturnUrl={Uri.EscapeDataString(wanted)}", answers);
        using var looked2 = await browser.GetAsync($"/refresh-sign-in?returnTo={Uri.EscapeDataString(wanted)}", Cancel);

        Assert.All(new[] { signedIn, looked2 }, a => StaysHere(a.Headers.Location!));
    }

    private static void StaysHere(Uri location)
    {
        var to = new Uri(new Uri("https://localhost"), location);
        Assert.Equal("localhost", to.Host);
        Assert.Equal("https", to.Scheme);
    }
}
