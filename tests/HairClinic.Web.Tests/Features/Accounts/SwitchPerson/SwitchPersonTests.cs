using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using HairClinic.Web.Tests.Security;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts.SwitchPerson;

public sealed class SwitchPersonTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_name_and_a_PIN_let_one_person_take_over_from_another()
    {
        await using var at = await TabletSite.OpenAsync(server, StaffRole.Stylist);
        await at.BeginAsync(StaffRole.Stylist);
        await at.LockAsync();
        await at.BeginAsync(StaffRole.Owner, "593024");
        await at.LockAsync();
        Assert.True(await at.ListsAsync(StaffRole.Owner) && await at.ListsAsync(StaffRole.Stylist));

        EmptySite.LeadsTo("/", await at.TypeAsync(StaffRole.Stylist));

        // It is the stylist now: a stylist's room opens, an owner's does not.
        EmptySite.LeadsTo("/at-the-chair", await at.Tablet.GetAsync("/", Cancel));
        Assert.Equal(HttpStatusCode.Redirect, (await at.Tablet.GetAsync("/practice/access-log", Cancel)).StatusCode);
        Assert.Contains("Lock now", await at.Tablet.GetStringAsync("/my-sign-in", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Five_wrong_tries_kill_it_until_a_full_sign_in()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        await at.LockAsync();
        for (var tried = 0; tried < TabletPin.Tries; tried++)
            Assert.False(await at.OpensAsync(StaffRole.Owner, "718203"));

        Assert.False(await at.OpensAsync(StaffRole.Owner));

        await at.SignInFullyAsync(StaffRole.Owner);
        await at.LockAsync();
        Assert.True(await at.OpensAsync(StaffRole.Owner));
    }

    [Fact]
    public async Task A_right_try_forgives_the_wrong_ones_before_it()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        for (var round = 0; round < 2; round++)
        {
            await at.LockAsync();
            for (var tried = 1; tried < TabletPin.Tries; tried++)
                Assert.False(await at.OpensAsync(StaffRole.Owner, "718203"));
            Assert.True(await at.OpensAsync(StaffRole.Owner));
        }
    }

    [Fact]
    public async Task Tries_at_the_same_moment_are_all_counted()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        await at.LockAsync();
        var owner = await at.PersonAsync(StaffRole.Owner);

        await Task.WhenAll(Enumerable.Range(0, TabletPin.Tries - 1).Select(_ => at.ProveAsync(owner, "718203")));
        Assert.Equal(TabletPin.Tries - 1, await CountedAsync(at));
        Assert.True(await at.ProveAsync(owner, TabletSite.Pin));

        await Task.WhenAll(Enumerable.Range(0, 2 * TabletPin.Tries).Select(_ => at.ProveAsync(owner, "718203")));
        Assert.Equal(TabletPin.Tries, await CountedAsync(at));
        Assert.False(await at.ProveAsync(owner, TabletSite.Pin));
    }

    [Fact]
    public async Task Twelve_hours_after_the_full_sign_in_it_opens_nothing()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        at.Site.Clock.Advance(SignInSession.Longest - Duration.FromMinutes(1));
        Assert.True(await at.ListsAsync(StaffRole.Owner) && await at.OpensAsync(StaffRole.Owner));

        at.Site.Clock.Advance(Duration.FromMinutes(1));

        // Whoever came by PIN a minute ago is out as well, and coming by PIN did not begin the hours anew.
        Assert.False(await at.IsAtWorkAsync());
        Assert.False(await at.ListsAsync(StaffRole.Owner));
        Assert.False(await at.ProveAsync(await at.PersonAsync(StaffRole.Owner), TabletSite.Pin));
    }

    [Fact]
    public async Task A_changed_password_undoes_it_and_the_next_full_sign_in_does_not_bring_it_back()
    {
        const string fresh = "seven quiet orchards at noon";
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var elsewhere = await at.Site.SignInAsync(StaffRole.Owner);
        var answers = new Dictionary<string, string>
        {
            ["Input.Present"] = AccountsSite.Password,
            ["Input.Password"] = fresh,
            ["Input.Again"] = fresh,
        };
        await EmptySite.SendAsync(elsewhere, "/change-password", answers);

        Assert.False(await at.IsAtWorkAsync());
        Assert.False(await at.ListsAsync(StaffRole.Owner));
        await at.SignInFullyAsync(StaffRole.Owner, fresh);
        await at.LockAsync();
        Assert.True(await at.ListsAsync(StaffRole.Owner));
        Assert.False(await at.OpensAsync(StaffRole.Owner));
    }

    [Fact]
    public async Task Someone_who_left_signed_out_or_was_signed_out_is_not_listed_and_opens_nothing()
    {
        await using var at = await TabletSite.OpenAsync(server, StaffRole.Stylist, StaffRole.FrontDesk);
        await at.BeginAsync(StaffRole.Stylist);
        await at.LockAsync();
        await at.BeginAsync(StaffRole.FrontDesk);
        EmptySite.LeadsTo("/switch-person", await AccountsSite.PostAsync(at.Tablet, "/my-sign-in", "/sign-out"));
        Assert.False(await at.ListsAsync(StaffRole.FrontDesk));
        Assert.True(await at.ListsAsync(StaffRole.Stylist));

        var stylist = await at.PersonAsync(StaffRole.Stylist);
        await at.Site.DoAsync(
            async (_, db) =>
            {
                await PersonSessions.EndAllAsync(db, stylist, at.Site.Clock.GetCurrentInstant(), Cancel);
                return await db.SaveChangesAsync(Cancel);
            }
        );

        Assert.False(await at.ListsAsync(StaffRole.Stylist));
        Assert.False(await at.ProveAsync(stylist, TabletSite.Pin));
        Assert.False(await at.ProveAsync(await at.PersonAsync(StaffRole.FrontDesk), TabletSite.Pin));
    }

    [Fact]
    public async Task A_PIN_proves_nothing_anew_and_the_full_proof_does()
    {
        const string grave = "/practice/binder/export/clients?for=program";
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        Assert.Equal(HttpStatusCode.OK, (await at.Tablet.GetAsync(grave, Cancel)).StatusCode);
        await at.LockAsync();

        Assert.True(await at.OpensAsync(StaffRole.Owner));

        var asks = "/step-up?return=" + Uri.EscapeDataString(grave);
        EmptySite.LeadsTo(asks, await at.Tablet.GetAsync(grave, Cancel));
        var proof = new Dictionary<string, string> { ["Input.Password"] = AccountsSite.Password };
        EmptySite.LeadsTo(grave, await EmptySite.SendAsync(at.Tablet, asks, proof));
        Assert.Equal(HttpStatusCode.OK, (await at.Tablet.GetAsync(grave, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Wrong_dead_and_missing_PINs_are_answered_alike()
    {
        await using var at = await TabletSite.OpenAsync(server, StaffRole.Stylist);
        await at.BeginAsync(StaffRole.Owner);
        await at.LockAsync();
        await at.SignInFullyAsync(StaffRole.Stylist);
        await at.LockAsync();

        var missing = await AlertAsync(at, StaffRole.Stylist);
        var wrong = await AlertAsync(at, StaffRole.Owner);
        for (var tried = 0; tried < TabletPin.Tries; tried++)
            await at.TypeAsync(StaffRole.Owner, "718203");

        Assert.NotNull(wrong);
        Assert.Equal([wrong, wrong], new[] { missing, await AlertAsync(at, StaffRole.Owner) });
    }

    [Fact]
    public async Task It_is_kept_neither_in_clear_nor_so_that_the_database_alone_could_be_guessed_from()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var row = await at.Site.DoAsync((_, db) => db.TabletPins.AsNoTracking().SingleAsync(Cancel));

        Assert.DoesNotContain(TabletSite.Pin, row.Hash, StringComparison.Ordinal);
        // Whoever hashes the six digits themselves does not find it: a key from outside the database is mixed in.
        var hasher = new Microsoft.AspNetCore.Identity.PasswordHasher<AppUser>();
        Assert.Equal(
            Microsoft.AspNetCore.Identity.PasswordVerificationResult.Failed,
            hasher.VerifyHashedPassword(new AppUser(), row.Hash, TabletSite.Pin)
        );
    }

    [Fact]
    public async Task The_visit_passes_on_to_whoever_may_see_it_and_nothing_else_does()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var visit = site.Here.Own.Visit.Id;
        var tablet = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Owner]));
        await TabletSite.MakeAsync(tablet);
        var (mine, theirs) = (site.Here.Staff[StaffRole.FrontDesk], site.Elsewhere.Staff[StaffRole.FrontDesk]);
        foreach (var person in new[] { mine, theirs })
        {
            await ClinicSite.TryAsync(tablet, ClinicSite.NameOf(person), ClinicSite.Password);
            var pin = new Dictionary<string, string> { ["Input.Pin"] = TabletSite.Pin, ["Input.Again"] = TabletSite.Pin };
            await EmptySite.SendAsync(tablet, "/my-sign-in/set-pin", pin);
        }
        await TypeAsync(mine, "");

        // A screen that is locked, or finds itself locked, names the visit; of any other page nothing.
        foreach (
            var (from, to) in new[]
            {
                ($"/visits/{visit}/log-rebond", $"/switch-person?visit={visit}"),
                ($"/clients/{site.Here.Own.Client.Id}", "/switch-person"),
            }
        )
        {
            EmptySite.LeadsTo("/", await TypeAsync(mine, ""));
            var fields = new Dictionary<string, string> { ["from"] = from };
            EmptySite.LeadsTo(to, await AccountsSite.PostAsync(tablet, "/my-sign-in", "/lock-tablet", fields));
            EmptySite.LeadsTo(to, await tablet.GetAsync(from + "?part=2", Cancel));
        }
        EmptySite.LeadsTo("/", await TypeAsync(theirs, $"&visit={visit}"));
        EmptySite.LeadsTo($"/visits/{visit}/visit-details", await TypeAsync(mine, $"&visit={visit}"));

        Task<HttpResponseMessage> TypeAsync(Person who, string more) =>
            EmptySite.SendAsync(
                tablet,
                $"/switch-person?who={who.Id}{more}",
                new Dictionary<string, string> { ["Input.Pin"] = TabletSite.Pin }
            );
    }

    [Fact]
    public async Task A_browser_that_is_no_tablet_is_led_to_sign_in()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);

        EmptySite.LeadsTo("/sign-in", await at.Site.Browser().GetAsync("/switch-person", Cancel));
        // A made-up token, in the right practice, is none either.
        var stranger = at.Site.Browser();
        stranger.DefaultRequestHeaders.Add("Cookie", $"__Host-tablet={at.Site.PracticeId:N}.{new string('A', 43)}");
        EmptySite.LeadsTo("/sign-in", await stranger.GetAsync("/switch-person", Cancel));
    }

    private static async Task<string?> AlertAsync(TabletSite at, StaffRole role)
    {
        var page = await (await at.TypeAsync(role, "718203")).Content.ReadAsStringAsync(Cancel);
        return new AngleSharp.Html.Parser.HtmlParser().ParseDocument(page).QuerySelector("[role=alert]")?.TextContent;
    }

    private static Task<int> CountedAsync(TabletSite at) =>
        at.Site.DoAsync((_, db) => db.TabletPins.Select(p => p.WrongTries).SingleAsync(Cancel));
}
