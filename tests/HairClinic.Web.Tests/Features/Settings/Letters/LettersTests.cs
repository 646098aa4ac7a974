using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using HairClinic.Web.Mail;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using HairClinic.Web.Tests.Mail;
using HairClinic.Web.Tests.Security;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using AskSlice = HairClinic.Web.Features.MyHair.AskLink;
using InviteSlice = HairClinic.Web.Features.MyHair.InviteClient;
using Slice = HairClinic.Web.Features.Settings.Letters;

namespace HairClinic.Web.Tests.Features.Settings.Letters;

/// <summary>What pages say of letters is what becomes of them: with a mail server, without one, and with one that is away.</summary>
public sealed class LettersTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task With_a_mail_server_a_letter_to_oneself_arrives_and_nothing_is_missing()
    {
        await using var listener = new MailListener();
        await using var site = await OpenAsync(With(listener.Port));

        Assert.Empty(MailWarnings.Find(await ManagerAsync(site, s => s.OpenAsync(ask: true, Cancel))));
        var outcome = await ManagerAsync(site, s => s.SendTestAsync(Cancel));

        Assert.Equal(MailWay.Server, outcome.Way);
        Assert.Equal([outcome.Address], Assert.Single(listener.Taken).To.Mailboxes.Select(m => m.Address));
    }

    [Fact]
    public async Task Without_one_nothing_is_said_to_be_on_its_way_and_nothing_is_kept()
    {
        await using var site = await OpenAsync(Without);

        Assert.Contains(
            MailWarnings.Find(await ManagerAsync(site, s => s.OpenAsync(ask: true, Cancel))),
            m => m.Sentence.StartsWith("No mail server is set", StringComparison.Ordinal)
        );
        Assert.Equal(
            MailReadiness.NoServer,
            (await Assert.ThrowsAsync<Refusal>(() => ManagerAsync(site, s => s.SendTestAsync(Cancel)))).Sentence
        );
        Assert.Equal(MailReadiness.NoServer, (await Assert.ThrowsAsync<Refusal>(() => InviteAsync(site))).Sentence);
        foreach (var address in new[] { site.Here.Own.Client.Email!, "nobody@example.test" })
            Assert.Contains("This site cannot send letters at the moment", await AskAsync(site, address), StringComparison.Ordinal);

        // What other slices ask to be sent is dropped by the worker, not kept for a day when it would only confuse.
        var item = await SentAsync(site, new Letter("ada@example.test", "Your sign-in was changed", "A passkey was added."));
        Assert.Equal((WorkOutcome.GivenUp, nameof(NoMailWayException), 0), (item.Fate, item.LastError, item.Attempts));
        Assert.Equal(new Letter("", "", ""), WorkItemFactory.ReadBody<Letter>(item));
        Assert.Equal(1, await ItemsAsync(site, db => db.WorkItems.CountAsync(w => w.Kind == WorkKind.SendMail, Cancel)));
    }

    [Fact]
    public async Task While_the_mail_server_is_away_pages_say_so_alike_for_every_address_and_nothing_waits_to_confuse_later()
    {
        var gone = new MailListener();
        await gone.DisposeAsync();
        await using var site = await OpenAsync(With(gone.Port));

        Assert.Contains(
            "does not answer",
            (await Assert.ThrowsAsync<Refusal>(() => ManagerAsync(site, s => s.SendTestAsync(Cancel)))).Message,
            StringComparison.Ordinal
        );
        Assert.Contains("does not answer", (await Assert.ThrowsAsync<Refusal>(() => InviteAsync(site))).Message, StringComparison.Ordinal);
        var known = await AskAsync(site, site.Here.Own.Client.Email!);
        Assert.Contains("This site cannot send letters at the moment", known, StringComparison.Ordinal);
        Assert.Contains(
            "This site cannot send letters at the moment",
            await AskAsync(site, "nobody@example.test"),
            StringComparison.Ordinal
        );
        Assert.Equal(0, await ItemsAsync(site, db => db.WorkItems.CountAsync(w => w.Kind == WorkKind.SendMail, Cancel)));
    }

    [Fact]
    public async Task Letters_that_wait_are_told_to_the_manager_with_how_many_since_when_and_why()
    {
        await using var busy = new BadMailServer(BadMailServer.Way.RefusesForNow);
        await using var site = await OpenAsync(With(busy.Port));

        var item = await SentAsync(site, new Letter("ada@example.test", "Your sign-in was changed", "A passkey was added."), tried: true);
        var screen = await ManagerAsync(site, s => s.OpenAsync(ask: true, Cancel));

        Assert.Equal((1, item.LastError), (screen.Waiting.Count, screen.Waiting.LastFault));
        Assert.Equal("SmtpCommandException 451", item.LastError);
        var said = MailWarnings.Find(screen).ToList();
        Assert.Contains(
            said,
            m => m.Sentence.StartsWith("Letters that did not go out", StringComparison.Ordinal) && m.Arguments[0].Equals(1)
        );
        Assert.Contains(said, m => m.Sentence == "The mail server refuses letters.");
    }

    [Fact]
    public async Task Letters_that_did_not_go_are_listed_with_what_they_were_to_whom_and_why_and_without_a_word_of_them()
    {
        await using var listener = new MailListener { Refuses = true };
        await using var site = await OpenAsync(With(listener.Port));
        await SentAsync(site, new Letter("ada@example.test", "A", "B") { Kind = LetterKind.SignInChanged });
        await SentAsync(site, new Letter("own@example.test", "A", "B") { Kind = LetterKind.SignInLink, For = site.Here.Own.Client.Id });
        await SentAsync(
            site,
            new Letter("far@example.test", "A", "B") { Kind = LetterKind.SignInLink, For = site.Elsewhere.Own.Client.Id }
        );

        var screen = await ManagerAsync(site, s => s.OpenAsync(ask: true, Cancel));

        Assert.Equal(
            [
                ("A link to their own page", "a client of another salon", null),
                ("A link to their own page", "client {0}", site.Here.Own.Client.Code),
                ("Word that a sign-in was changed", "staff", null),
            ],
            screen.Lost.Select(l => (EnumWords.InEnglish(l.Kind), l.ToWhom, l.Client))
        );
        Assert.All(screen.Lost, l => Assert.StartsWith("The mail server refused it for good", Assert.Single(l.Why())));
        Assert.Contains(
            MailWarnings.Find(screen),
            m => m.Sentence.StartsWith("Letters of the last 30 days", StringComparison.Ordinal) && m.Arguments[0].Equals(3)
        );
    }

    [Fact]
    public async Task Other_work_that_was_given_up_is_told_and_can_be_tried_again()
    {
        await using var site = await OpenAsync(Without);
        var now = NodaTime.SystemClock.Instance.GetCurrentInstant();
        var item = WorkItemFactory.RefreshDueDates(clientId: null, now);
        item.End(WorkOutcome.GivenUp, "PostgresException 53100", now);
        await ItemsAsync(
            site,
            db =>
            {
                db.WorkItems.Add(item);
                return db.SaveChangesAsync(Cancel);
            }
        );

        Assert.Contains(
            MailWarnings.Find(await ManagerAsync(site, s => s.OpenAsync(ask: false, Cancel))),
            m => m.Sentence.StartsWith("Work behind the screens", StringComparison.Ordinal)
        );
        Assert.Equal(1, await ManagerAsync(site, s => s.RetryNonMailWorkAsync(Cancel)));

        for (var waited = 0; waited < 300; waited++, await Task.Delay(100, Cancel))
        {
            var after = await ItemsAsync(site, db => db.WorkItems.AsNoTracking().SingleAsync(w => w.Id == item.Id, Cancel));
            if (after is { DoneAt: not null, Fate: null })
                return;
        }
        Assert.Fail("It was not done.");
    }

    [Fact]
    public async Task Where_the_site_does_not_know_its_address_no_link_leaves_and_the_owner_is_told()
    {
        await using var listener = new MailListener();
        await using var site = await OpenAsync(builder =>
        {
            With(listener.Port)(builder);
            builder.UseSetting("Proxy:Addresses", "127.0.0.1");
        });

        Assert.Contains(
            MailWarnings.Find(await ManagerAsync(site, s => s.OpenAsync(ask: true, Cancel))),
            m => m.Sentence.StartsWith("This site was not told its own address", StringComparison.Ordinal)
        );
        Assert.Equal(MailReadiness.NoAddress, (await Assert.ThrowsAsync<Refusal>(() => InviteAsync(site))).Sentence);
        Assert.Contains("cannot send letters", await AskAsync(site, site.Here.Own.Client.Email!), StringComparison.Ordinal);
        Assert.Empty(listener.Taken);
    }

    [Fact]
    public async Task A_link_leads_to_the_sites_own_address_whatever_host_it_was_asked_by()
    {
        await using var listener = new MailListener();
        await using var site = await OpenAsync(builder =>
        {
            With(listener.Port)(builder);
            builder.UseSetting(SiteAddress.Setting, "https://book.example");
        });
        var stranger = site.Browser();
        stranger.DefaultRequestHeaders.Host = "forged.example";

        await EmptySite.SendAsync(
            stranger,
            "/my-hair/ask-link",
            new Dictionary<string, string> { ["Input.Email"] = site.Here.Own.Client.Email! }
        );
        for (var waited = 0; listener.Taken.IsEmpty && waited < 300; waited++)
            await Task.Delay(100, Cancel);

        var text = Assert.Single(listener.Taken).TextBody!;
        Assert.Contains("https://book.example/my-hair/open-link?token=", text, StringComparison.Ordinal);
        Assert.DoesNotContain("forged", text, StringComparison.Ordinal);
    }

    private static void Without(IWebHostBuilder builder) => builder.UseSetting("Mail:Folder", "");

    private static Action<IWebHostBuilder> With(int port) =>
        builder =>
            builder
                .UseSetting("Mail:Host", "127.0.0.1")
                .UseSetting("Mail:Port", $"{port}")
                .UseSetting("Mail:Tls", "false")
                .UseSetting("Mail:From", "desk@practice.example");

    private async Task<ClinicSite> OpenAsync(Action<IWebHostBuilder> more)
    {
        var site = await ClinicSite.OpenAsync(server, more);
        var manager = site.Here.Staff[StaffRole.Manager].Id;
        await ItemsAsync(
            site,
            db =>
                db.Users.Where(u => u.PersonId == manager)
                    .ExecuteUpdateAsync(set => set.SetProperty(u => u.Email, "manager@practice.example"), Cancel)
        );
        return site;
    }

    private static Task<T> ManagerAsync<T>(ClinicSite site, Func<Slice, Task<T>> call) => AsAsync<Slice, T>(site, StaffRole.Manager, call);

    private static Task<InviteSlice.Outcome> InviteAsync(ClinicSite site) =>
        AsAsync<InviteSlice, InviteSlice.Outcome>(
            site,
            StaffRole.FrontDesk,
            s => s.SaveAsync(Guid.CreateVersion7(), new(site.Here.Own.Client.Id), Cancel)
        );

    private static Task<T> AsAsync<TSlice, T>(ClinicSite site, StaffRole role, Func<TSlice, Task<T>> call)
        where TSlice : notnull =>
        site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunAsAsync(
                new PersonActor(site.PracticeId, site.Here.Staff[role].Id, role, [site.Here.Salon.Id], site.Here.Salon.Id),
                services => call(services.GetRequiredService<TSlice>())
            );

    private static async Task<string> AskAsync(ClinicSite site, string address)
    {
        using var answer = await EmptySite.SendAsync(
            site.Browser(),
            "/my-hair/ask-link",
            new Dictionary<string, string> { ["Input.Email"] = address }
        );
        return await answer.Content.ReadAsStringAsync(Cancel);
    }

    // The site's own work loop sends it.
    private static async Task<WorkItem> SentAsync(ClinicSite site, Letter letter, bool tried = false)
    {
        var item = WorkItemFactory.SendLetter(letter, NodaTime.SystemClock.Instance.GetCurrentInstant());
        await ItemsAsync(
            site,
            db =>
            {
                db.WorkItems.Add(item);
                return db.SaveChangesAsync(Cancel);
            }
        );
        for (var waited = 0; waited < 300; waited++, await Task.Delay(100, Cancel))
        {
            var now = await ItemsAsync(site, db => db.WorkItems.AsNoTracking().SingleAsync(w => w.Id == item.Id, Cancel));
            if (tried ? now.Attempts > 0 : now.DoneAt is not null)
                return now;
        }
        throw new TimeoutException("The letter was not tried.");
    }

    private static Task<T> ItemsAsync<T>(ClinicSite site, Func<Web.Data.ClinicDb, Task<T>> read) =>
        site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                site.PracticeId,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await read(db);
                }
            );
}
