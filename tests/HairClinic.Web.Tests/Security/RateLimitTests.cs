using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;

namespace HairClinic.Web.Tests.Security;

public sealed class RateLimitTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task One_name_is_tried_from_one_place_twenty_times_and_no_more_whether_anybody_has_it_or_not()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var answers = new List<(int Served, string Page)>();
        foreach (var name in new[] { ClinicSite.NameOf(site.Here.Staff[StaffRole.Owner]), "nobody.at.all" })
        {
            var browser = site.Browser();
            var served = 0;
            HttpResponseMessage answer;
            // Without a password nothing is hashed, but it is a try all the same.
            while ((answer = await ClinicSite.TryAsync(browser, name, "")).StatusCode == HttpStatusCode.OK)
                served++;
            Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
            answers.Add((served, await answer.Content.ReadAsStringAsync(Cancel)));
        }

        Assert.Equal(20, answers[0].Served);
        Assert.Equal(answers[0], answers[1]);
    }

    [Fact]
    public async Task A_salon_behind_one_address_signs_in_in_the_morning()
    {
        await using var site = await ClinicSite.OpenAsync(server);

        // Thirty devices, each with its own name and one slip.
        for (var device = 0; device < 30; device++)
        {
            var browser = site.Browser();
            Assert.Equal(HttpStatusCode.OK, (await ClinicSite.TryAsync(browser, $"device{device}", "")).StatusCode);
            Assert.Equal(HttpStatusCode.OK, (await ClinicSite.TryAsync(browser, $"device{device}", "")).StatusCode);
        }
    }

    [Fact]
    public async Task Nobodys_mailbox_is_filled_with_links()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var statuses = new Dictionary<string, List<HttpStatusCode>>();
        foreach (var email in new[] { site.Here.Own.Client.Email!, "nobody@example.test" })
        {
            statuses[email] = [];
            for (var i = 0; i < 6; i++)
                statuses[email].Add((await AskAsync(site, email)).StatusCode);
        }

        Assert.Equal(4, statuses[site.Here.Own.Client.Email!].Count(s => s == HttpStatusCode.OK));
        Assert.Equal(statuses[site.Here.Own.Client.Email!], statuses["nobody@example.test"]);
    }

    [Fact]
    public async Task Whoever_is_refused_is_told_when_to_come_back_on_a_page_of_ours()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        HttpResponseMessage answer;
        do answer = await AskAsync(site, "someone@example.test");
        while (answer.StatusCode == HttpStatusCode.OK);

        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
        Assert.InRange(answer.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 600);
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Contains("A little later, please", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Looking_at_a_page_again_and_again_is_free()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var browser = site.Browser();

        for (var i = 0; i < 100; i++)
            Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/my-hair/ask-link", Cancel)).StatusCode);
    }

    [Fact]
    public async Task The_whole_book_is_not_taken_out_again_and_again()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var manager = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Manager]));
        var served = 0;
        while ((await manager.GetAsync("/practice/binder/export/clients?for=people", Cancel)).StatusCode == HttpStatusCode.OK)
            served++;
        var other = await site.SignInAsync(ClinicSite.NameOf(site.Elsewhere.Staff[StaffRole.Manager]));

        // Four sheets in two forms, several times over; counted by person, not by address.
        Assert.Equal(40, served);
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync("/practice/binder/export/clients?for=people", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await manager.GetAsync("/due", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_flood_from_one_person_is_stopped_and_their_neighbour_goes_on()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var busy = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.FrontDesk]));
        var calm = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Manager]));

        var flood = await Task.WhenAll(Enumerable.Range(0, 900).Select(_ => busy.GetAsync("/change-password", Cancel)));

        Assert.Contains(flood, a => a.StatusCode == HttpStatusCode.TooManyRequests);
        Assert.Equal(HttpStatusCode.OK, (await calm.GetAsync("/due", Cancel)).StatusCode);
    }

    // An IPv6 connection is given a network of 64 bits, and its owner makes up the addresses in it (RFC 6177, RFC 4291 section 2.5.1);
    // ::ffff:0:0/96 is how IPv4 looks to a socket that speaks both (RFC 4291 section 2.5.5.2).
    [Theory]
    [InlineData("2001:db8:7:1::{0:x}", 40)]
    [InlineData("2001:db8:7:{0:x}::1", 60)]
    [InlineData("::ffff:192.0.2.{0}", 60)]
    public async Task Sixty_addresses_of_one_IPv6_network_are_one_place_and_those_of_sixty_networks_are_sixty(string places, int served)
    {
        await using var site = await ClinicSite.OpenAsync(server, SentFrom.Believe);
        var answers = new List<HttpStatusCode>();
        for (var i = 1; i <= 60; i++)
        {
            var at = site.Browser().At(string.Format(System.Globalization.CultureInfo.InvariantCulture, places, i));
            answers.Add((await AskAsync(at, $"guest{i}@example.test")).StatusCode);
        }

        Assert.Equal(served, answers.Count(a => a == HttpStatusCode.OK));
        Assert.All(answers.Skip(served), a => Assert.Equal(HttpStatusCode.TooManyRequests, a));
    }

    private static Task<HttpResponseMessage> AskAsync(ClinicSite site, string email) => AskAsync(site.Browser(), email);

    private static Task<HttpResponseMessage> AskAsync(HttpClient browser, string email) =>
        EmptySite.SendAsync(browser, "/my-hair/ask-link", new Dictionary<string, string> { ["Input.Email"] = email });
}
