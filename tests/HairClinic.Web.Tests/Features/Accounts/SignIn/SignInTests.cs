using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Practices.FirstRun;

namespace HairClinic.Web.Tests.Features.Accounts.SignIn;

public sealed class SignInTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Owner", "another long guess")]
    [InlineData("Nobody", AccountsSite.Password)]
    public async Task A_wrong_name_and_a_wrong_password_answer_alike(string name, string password)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var answers = new Dictionary<string, string> { ["Input.Name"] = name, ["Input.Password"] = password };

        var page = await (await EmptySite.SendAsync(site.Browser(), "/sign-in", answers)).Content.ReadAsStringAsync(Cancel);

        Assert.Contains("That name and password do not go together", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/practice/people", "/practice/people")]
    [InlineData("//elsewhere.example", "/")]
    public async Task Whoever_signs_in_comes_back_to_where_they_wanted_to_go_on_this_site(string wanted, string to)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var answers = new Dictionary<string, string> { ["Input.Name"] = "Owner", ["Input.Password"] = AccountsSite.Password };

        EmptySite.LeadsTo(to, await EmptySite.SendAsync(site.Browser(), $"/sign-in?ReturnUrl={Uri.EscapeDataString(wanted)}", answers));
    }
}
