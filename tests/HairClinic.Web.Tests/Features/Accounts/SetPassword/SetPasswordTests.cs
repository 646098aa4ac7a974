using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Slice = HairClinic.Web.Features.Accounts.SetPassword;

namespace HairClinic.Web.Tests.Features.Accounts.SetPassword;

public sealed class SetPasswordTests(PgServer server)
{
    [Theory]
    [InlineData("/set-password")]
    [InlineData("/set-password?for=nobody&token=!!")]
    [InlineData("/set-password?for=00000000-0000-0000-0000-000000000001&token=AAAA")]
    public async Task A_link_that_is_not_whole_and_an_unknown_account_answer_alike(string link)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var answers = new Dictionary<string, string>
        {
            ["Input.Password"] = "seven copper kettles",
            ["Input.Again"] = "seven copper kettles",
        };

        var page = await (await EmptySite.SendAsync(site.Browser(), link, answers)).Content.ReadAsStringAsync(
            TestContext.Current.CancellationToken
        );

        Assert.Contains("This link was used already, is older than a day, or is not whole.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("kettles", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fourteen chars", "fourteen chars", nameof(Slice.Input.Password))]
    [InlineData("seven copper kettles", "seven copper kettle", nameof(Slice.Input.Again))]
    public void A_short_password_or_two_that_differ_are_told(string password, string again, string field) =>
        Assert.Equal(
            field,
            Assert.Single(new SetPasswordRules().Validate(new Slice.Input { Password = password, Again = again }).Errors).PropertyName
        );
}
