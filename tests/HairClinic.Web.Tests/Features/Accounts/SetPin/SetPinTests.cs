using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Accounts.SetPin;

public sealed class SetPinTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Setting_it_asks_for_a_fresh_proof_of_who_one_is()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        await at.LockAsync();
        await at.TypeAsync(StaffRole.Owner);

        EmptySite.LeadsTo("/step-up?return=%2Fmy-sign-in%2Fset-pin", await at.Tablet.GetAsync("/my-sign-in/set-pin", Cancel));
    }

    [Fact]
    public async Task A_PIN_that_is_tried_first_is_refused_and_a_letter_tells_of_a_set_one()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.SignInFullyAsync(StaffRole.Owner);

        var refused = await SetAsync(at, "123456", "123456");
        Assert.Contains("runs up or down", refused, StringComparison.Ordinal);
        Assert.Contains("The two PINs differ", await SetAsync(at, TabletSite.Pin, "593024"), StringComparison.Ordinal);
        Assert.Equal(0, await at.Site.DoAsync((_, db) => db.TabletPins.CountAsync(Cancel)));

        Assert.Contains("Your PIN is set", await SetAsync(at, TabletSite.Pin, TabletSite.Pin), StringComparison.Ordinal);
        Assert.Contains(await at.Site.LettersAsync(), letter => letter.Contains("A PIN was set", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Removed_it_opens_nothing()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var fields = new Dictionary<string, string> { ["_handler"] = "remove-pin" };
        await AccountsSite.PostAsync(at.Tablet, "/my-sign-in/set-pin", "/my-sign-in/set-pin", fields);
        await at.LockAsync();

        Assert.False(await at.OpensAsync(StaffRole.Owner));
    }

    [Fact]
    public async Task It_opens_at_the_tablet_where_it_was_set_and_nowhere_else()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var other = await at.Site.SignInAsync(StaffRole.Owner);
        Assert.Contains("no shared tablet", await other.GetStringAsync("/my-sign-in/set-pin", Cancel), StringComparison.Ordinal);
        await TabletSite.MakeAsync(other, "Desk tablet");
        var there = new TabletSite(at.Site, other);
        await there.SignInFullyAsync(StaffRole.Owner);
        await there.LockAsync();

        Assert.True(await there.ListsAsync(StaffRole.Owner));
        Assert.False(await there.OpensAsync(StaffRole.Owner));
    }

    private static async Task<string> SetAsync(TabletSite at, string pin, string again)
    {
        var answers = new Dictionary<string, string> { ["Input.Pin"] = pin, ["Input.Again"] = again };
        return await (await EmptySite.SendAsync(at.Tablet, "/my-sign-in/set-pin", answers)).Content.ReadAsStringAsync(Cancel);
    }
}
