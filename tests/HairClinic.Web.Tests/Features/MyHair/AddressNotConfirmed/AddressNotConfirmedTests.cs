using System.Net;
using HairClinic.Web.Shell;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using HairClinic.Web.Tests.Security;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.MyHair.AddressNotConfirmed;

public sealed class AddressNotConfirmedTests(PgServer server)
{
    /// <summary>What an address that is not confirmed opens of a client's own pages. The list is closed: the rest is confided.</summary>
    private static readonly string[] DatesOnly =
    [
        "/my-hair",
        "/my-hair/address-not-confirmed",
        "/my-hair/aftercare",
        "/my-hair/call-off-my-time",
        "/my-hair/choose-a-time",
        "/my-hair/dates.ics",
        "/my-hair/move-my-time",
        "/my-hair/my-bond-has-lifted",
        "/my-hair/preferences",
        "/my-hair/refresh-sign-in",
        "/my-hair/whose-dates",
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_page_of_a_client_helps_with_dates_or_asks_for_a_confirmed_address()
    {
        await using var site = await ClinicSite.OpenAsync(server);

        var open = Addresses.Of(site).Where(a => a.Policy == Policies.Client).Select(a => a.Template).Except(site.ConfirmedOnly());

        Assert.Equal(DatesOnly, open.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task An_address_the_desk_typed_is_led_to_why_and_gets_no_archive_and_no_picture()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var (client, photo) = (site.Here.Own.Client, site.Here.Own.Photo);
        await site.InPracticeAsync(
            async (_, db) =>
            {
                (await db.Clients.SingleAsync(c => c.Id == client.Id, Cancel)).SetContact(client.Phone, "typed@example.test");
                return await db.SaveChangesAsync(Cancel);
            }
        );
        var browser = await site.OpenLinkAsync(client);

        Assert.Contains(
            "For now you see your dates only here.",
            await browser.GetStringAsync("/my-hair", Cancel),
            StringComparison.Ordinal
        );
        string[] confided =
        [
            "take-my-data/file",
            "take-my-data",
            "my-photos",
            $"my-photos/{photo}",
            "my-units",
            "my-consents",
            "who-saw-mine",
        ];
        foreach (var page in confided)
            EmptySite.LeadsTo("/my-hair/address-not-confirmed", await browser.GetAsync($"/my-hair/{page}", Cancel));
        var why = WebUtility.HtmlDecode(await browser.GetStringAsync("/my-hair/address-not-confirmed", Cancel));
        Assert.Contains("Your salon has to confirm your e-mail address first.", why, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/my-hair/dates.ics", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/my-hair/choose-a-time", Cancel)).StatusCode);

        await site.InPracticeAsync((_, db) => KeyScene.ConfirmAsync(db, "typed@example.test"));

        // The same device, at its next page.
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/my-hair/my-photos", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync($"/my-hair/my-photos/{photo}", Cancel)).StatusCode);
    }
}
