using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Accounts;

namespace HairClinic.Web.Tests.Features.Settings.FirstRun;

public sealed class StartRedirectEndpointTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Everybody_is_led_to_the_room_they_work_in()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: Enum.GetValues<StaffRole>());

        foreach (var (role, room) in Rooms)
            EmptySite.LeadsTo(room, await (await site.SignInAsync(role)).GetAsync("/", Cancel));
        EmptySite.LeadsTo("/sign-in", await site.Browser().GetAsync("/", Cancel));
    }

    [Fact]
    public async Task An_owner_whose_guide_is_unfinished_is_led_back_into_it()
    {
        await using var site = await AccountsSite.OpenAsync(server, guideFinished: false, roles: [StaffRole.Owner, StaffRole.Manager]);

        EmptySite.LeadsTo("/first-run/keep-defaults", await (await site.SignInAsync(StaffRole.Owner)).GetAsync("/", Cancel));
        EmptySite.LeadsTo("/due", await (await site.SignInAsync(StaffRole.Manager)).GetAsync("/", Cancel));
    }

    [Fact]
    public async Task An_address_that_leads_nowhere_says_so()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        var answer = await (await site.SignInAsync(StaffRole.Owner)).GetAsync("/no/such/page", Cancel);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is nothing here", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    private static readonly (StaffRole Role, string Room)[] Rooms =
    [
        (StaffRole.Owner, "/due"),
        (StaffRole.Manager, "/due"),
        (StaffRole.FrontDesk, "/due"),
        (StaffRole.Stylist, "/at-the-chair"),
        (StaffRole.Trainee, "/at-the-chair"),
    ];
}
