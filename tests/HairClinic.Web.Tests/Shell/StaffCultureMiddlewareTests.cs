using System.Net.Http.Headers;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Security;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Shell;

public sealed class StaffCultureMiddlewareTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_practice_that_writes_Spanish_shows_its_staff_English_throughout_and_its_clients_Spanish()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        await site.InPracticeAsync(
            async (_, db) =>
            {
                var settings = await db.PracticeSettings.SingleAsync(Cancel);
                settings.SetNameAndLocale(settings.Name, "ES", "es-ES");
                return await db.SaveChangesAsync(Cancel);
            }
        );
        var desk = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.FrontDesk]));
        var client = await site.OpenLinkAsync(site.Here.Own.Client);
        var stranger = site.Browser();
        foreach (var browser in new[] { desk, client, stranger })
            browser.DefaultRequestHeaders.AcceptLanguage.Add(new StringWithQualityHeaderValue("es-ES"));

        Assert.Contains("<html lang=\"en-GB\"", await desk.GetStringAsync("/due", Cancel), StringComparison.Ordinal);
        Assert.Contains("<html lang=\"en-GB\"", await stranger.GetStringAsync("/sign-in", Cancel), StringComparison.Ordinal);
        Assert.Contains("<html lang=\"es-ES\"", await client.GetStringAsync("/my-hair", Cancel), StringComparison.Ordinal);
        Assert.Contains("<html lang=\"es-ES\"", await stranger.GetStringAsync("/my-hair/ask-link", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_can_be_done_is_led_to_from_where_one_looks_for_it()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var owner = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Owner]));
        var desk = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.FrontDesk]));
        var client = site.Here.Own.Client.Id;

        Assert.Contains(
            "href=\"/practice/binder/export\"",
            await owner.GetStringAsync("/practice/overview", Cancel),
            StringComparison.Ordinal
        );
        Assert.Contains(
            $"href=\"/clients/{client}/invite-client\"",
            await desk.GetStringAsync($"/clients/{client}/card", Cancel),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_demos_letters_are_led_to_from_its_sign_in_page_and_its_clients_pages_and_a_real_practice_has_no_such_link()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        Assert.DoesNotContain(
            "demo-letters",
            await (await site.OpenLinkAsync(site.Here.Own.Client)).GetStringAsync("/my-hair", Cancel),
            StringComparison.Ordinal
        );
        await site.InPracticeAsync(
            async (_, db) =>
            {
                (await db.PracticeSettings.SingleAsync(Cancel)).MarkAsDemo();
                return await db.SaveChangesAsync(Cancel);
            }
        );

        Assert.Contains(
            "/my-hair/demo-letters",
            await (await site.OpenLinkAsync(site.Here.Own.Client)).GetStringAsync("/my-hair", Cancel),
            StringComparison.Ordinal
        );
    }
}
