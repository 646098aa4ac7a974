using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;

namespace HairClinic.Web.Tests.Features.Accounts.ChangePassword;

public sealed class ChangePasswordTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_new_password_holds_and_the_screen_it_was_changed_at_goes_on()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);

        var page = await ChangeAsync(browser, AccountsSite.Password, "seven copper kettles");

        Assert.Contains("It is changed.", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/practice/people", Cancel)).StatusCode);
        await site.SignInAsync(StaffRole.Owner, "seven copper kettles");
    }

    [Fact]
    public async Task Whoever_does_not_know_the_present_password_changes_nothing()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        var page = await ChangeAsync(await site.SignInAsync(StaffRole.Owner), "another long guess", "seven copper kettles");

        Assert.Contains("That is not your present password.", page, StringComparison.Ordinal);
        await site.SignInAsync(StaffRole.Owner);
    }

    private static async Task<string> ChangeAsync(HttpClient browser, string present, string next)
    {
        var answers = new Dictionary<string, string>
        {
            ["Input.Present"] = present,
            ["Input.Password"] = next,
            ["Input.Again"] = next,
        };
        return await (await EmptySite.SendAsync(browser, "/change-password", answers)).Content.ReadAsStringAsync(Cancel);
    }
}
