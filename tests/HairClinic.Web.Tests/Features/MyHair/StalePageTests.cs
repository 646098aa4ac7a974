using System.Globalization;
using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Tests.Security;
using HairClinic.Web.Ui;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.MyHair;

/// <summary>A client's page is drawn, the salon moves the visit, and the page that still shows the old time is sent.</summary>
public sealed class StalePageTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/my-hair/call-off-my-time")]
    [InlineData("/my-hair/move-my-time")]
    public async Task It_changes_nothing_says_what_the_visit_is_now_and_offers_the_same_anew(string page)
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var (client, visit) = (site.Here.Own.Client, site.Here.Own.Visit);
        var week = SystemClock.Instance.GetCurrentInstant().InUtc().Date.PlusDays(7);
        await MoveAsync(site, visit.Id, At(week));
        using var browser = await site.OpenLinkAsync(client);
        var address = $"{page}?visit={visit.Id}";
        var form = Form(await browser.GetStringAsync(address, Cancel));

        await MoveAsync(site, visit.Id, At(week.PlusDays(7)));
        var answer = await browser.PostAsync(address, new FormUrlEncodedContent(form), Cancel);
        var html = await answer.Content.ReadAsStringAsync(Cancel);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("This visit was changed since you opened the page, and nothing was done.", html, StringComparison.Ordinal);
        Assert.Contains(Dates.Day(week.PlusDays(7), week, CultureInfo.GetCultureInfo("en-GB")), html, StringComparison.Ordinal);
        Assert.Equal((VisitState.Booked, At(week.PlusDays(7))), await ReadAsync(site, visit.Id));

        // The page that came back acts on what it shows.
        answer = await browser.PostAsync(address, new FormUrlEncodedContent(Form(html)), Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.NotEqual((VisitState.Booked, At(week.PlusDays(7))), await ReadAsync(site, visit.Id));
    }

    [Fact]
    public async Task A_call_off_sent_twice_is_answered_twice_and_one_that_comes_too_late_in_words()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var (client, visit) = (site.Here.Own.Client, site.Here.Own.Visit);
        var week = SystemClock.Instance.GetCurrentInstant().InUtc().Date.PlusDays(7);
        await MoveAsync(site, visit.Id, At(week));
        using var browser = await site.OpenLinkAsync(client);
        var address = $"/my-hair/call-off-my-time?visit={visit.Id}";
        var form = Form(await browser.GetStringAsync(address, Cancel));

        await MoveAsync(site, visit.Id, SystemClock.Instance.GetCurrentInstant() + Duration.FromHours(2));
        var late = await browser.PostAsync(address, new FormUrlEncodedContent(form), Cancel);
        await MoveAsync(site, visit.Id, At(week));
        form = Form(await browser.GetStringAsync(address, Cancel));
        var first = await browser.PostAsync(address, new FormUrlEncodedContent(form), Cancel);
        var second = await browser.PostAsync(address, new FormUrlEncodedContent(form), Cancel);

        Assert.Contains("It is less than 24 hours away", await late.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        foreach (var answer in new[] { first, second })
            Assert.Contains("It is called off.", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    private static Instant At(LocalDate day) => (day + new LocalTime(10, 0)).InUtc().ToInstant();

    private static Dictionary<string, string> Form(string html)
    {
        var form = new HtmlParser()
            .ParseDocument(html)
            .QuerySelectorAll("main form[method=post]")
            .First(f => f.QuerySelector("[name=Visit]") is not null);
        return form.QuerySelectorAll("input[name]")
            .DistinctBy(i => i.GetAttribute("name"))
            .ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value") ?? "");
    }

    // As the salon does, whose page this is not: only the row changes.
    private static Task<int> MoveAsync(ClinicSite site, Guid visit, Instant start) =>
        DoAsync(
            site,
            async db =>
                await db
                    .Visits.Where(v => v.Id == visit)
                    .ExecuteUpdateAsync(
                        set =>
                            set.SetProperty(v => v.StartsAt, start)
                                .SetProperty(v => v.EndsAt, start + Duration.FromMinutes(90))
                                .SetProperty(v => v.Day, start.InUtc().Date),
                        Cancel
                    )
        );

    private static Task<(VisitState, Instant)> ReadAsync(ClinicSite site, Guid visit) =>
        DoAsync(
            site,
            async db =>
            {
                var found = await db.Visits.AsNoTracking().SingleAsync(v => v.Id == visit, Cancel);
                return (found.State, found.StartsAt);
            }
        );

    private static Task<T> DoAsync<T>(ClinicSite site, Func<Web.Data.ClinicDb, Task<T>> work) =>
        site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                site.PracticeId,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(db);
                }
            );
}
