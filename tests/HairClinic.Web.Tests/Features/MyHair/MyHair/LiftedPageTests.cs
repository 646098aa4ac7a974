using System.Globalization;
using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Bonding;
using HairClinic.Web.Tests.Security;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.MyHair.MyHair;

/// <summary>After a lift the page leads with when they come, not with the day the bond would have been due.</summary>
public sealed class LiftedPageTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Booked_for_tomorrow_it_leads_with_tomorrow()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        await LiftAsync(site);

        var page = await PageAsync(site);

        var visit = site.Here.Own.Visit;
        var lead = new HtmlParser().ParseDocument(page).QuerySelectorAll(".vast").Single().TextContent;
        Assert.StartsWith(visit.Day.ToString("ddd d MMM", CultureInfo.GetCultureInfo("en-GB")), lead, StringComparison.Ordinal);
        Assert.EndsWith("09:00", lead, StringComparison.Ordinal);
        Assert.Contains("An edge has come up: you come on", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Please come as soon as you can", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_visit_it_leads_to_the_next_free_times_and_to_the_number()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        await LiftAsync(site);
        await site.InPracticeAsync((_, db) => db.Visits.Where(v => v.ClientId == site.Here.Own.Client.Id).ExecuteDeleteAsync(Cancel));

        var page = await PageAsync(site);

        Assert.DoesNotContain("vast", page, StringComparison.Ordinal);
        Assert.Contains("Please come as soon as you can", page, StringComparison.Ordinal);
        Assert.Contains("See the next free times", page, StringComparison.Ordinal);
        var first = page[..page.IndexOf("An edge has come up</a>", StringComparison.Ordinal)];
        Assert.Contains("href=\"tel:+442079460", first, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_late_to_change_it_the_number_to_ring_stands_at_that_sentence()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        await site.InPracticeAsync(
            async (_, db) =>
            {
                (await db.PracticeSettings.SingleAsync(Cancel)).SetClientMoveHours(168);
                return await db.SaveChangesAsync(Cancel);
            }
        );

        var page = await PageAsync(site);

        var after = page[page.IndexOf("to change it, please ring us", StringComparison.Ordinal)..];
        Assert.True(
            after.IndexOf("href=\"tel:", StringComparison.Ordinal) < after.IndexOf("</section>", StringComparison.Ordinal),
            "The number stands in the same panel."
        );
    }

    private static async Task<string> PageAsync(ClinicSite site)
    {
        await site.InPracticeAsync(
            async (_, db) =>
            {
                (await db.Salons.SingleAsync(s => s.Id == site.Here.Salon.Id, Cancel)).Edit(
                    site.Here.Salon.Name,
                    site.Here.Salon.Zone,
                    site.Here.Salon.Currency,
                    "+442079460555",
                    null
                );
                return await db.SaveChangesAsync(Cancel);
            }
        );
        var browser = await site.OpenLinkAsync(site.Here.Own.Client);
        return WebUtility.HtmlDecode(await browser.GetStringAsync("/my-hair", Cancel));
    }

    private static Task<int> LiftAsync(ClinicSite site) =>
        site.InPracticeAsync(
            async (_, db) =>
            {
                var today = SystemClock.Instance.GetCurrentInstant().InUtc().Date;
                var bond = await db.Bonds.SingleAsync(b => b.ClientId == site.Here.Own.Client.Id && b.RemovedOn == null, Cancel);
                bond.ReportLift(new Lift(today, today, LiftZone.Front, SpotFixed: false));
                return await db.SaveChangesAsync(Cancel);
            }
        );
}
