using System.Diagnostics;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;
using HairClinic.Web.Tests.Workers;
using Microsoft.Extensions.Configuration;

namespace HairClinic.Web.Tests.Mail;

public sealed class SmtpMailSenderTests(PgServer server)
{
    private static readonly Letter Letter = new("nuria@example.test", "Ihr Termin – Donnerstag", "Überblick:\nDonnerstag um zehn.");

    [Fact]
    public async Task A_letter_asked_for_in_the_book_arrives_at_the_mail_server_as_it_was_written()
    {
        await using var listener = new MailListener();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        await Letterbox.WorkAsync(clinic, Route(listener, tls: false));

        var message = Assert.Single(listener.Taken);
        Assert.Equal(["nuria@example.test"], message.To.Mailboxes.Select(m => m.Address));
        var from = Assert.IsType<MimeKit.MailboxAddress>(Assert.Single(message.From));
        Assert.Equal(("Your appointments", "desk@practice.example"), (from.Name, from.Address));
        Assert.Equal(Letter.Subject, message.Subject);
        Assert.Equal(Letter.Text, message.TextBody!.ReplaceLineEndings("\n"));
        Assert.Equal("{}", Assert.Single(await Letterbox.ItemsAsync(clinic)).Body);
    }

    [Fact]
    public async Task Where_encryption_is_asked_for_nothing_is_sent_in_the_clear()
    {
        await using var listener = new MailListener();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        await Letterbox.WorkAsync(clinic, Route(listener, tls: true));

        Assert.Empty(listener.Taken);
        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((null, 1), (item.DoneAt, item.Attempts));
    }

    [Fact]
    public async Task While_the_mail_server_is_away_the_letter_waits_for_it()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );
        var gone = new MailListener();
        await gone.DisposeAsync();
        await Letterbox.WorkAsync(clinic, Route(gone, tls: false));
        clinic.Clock.AdvanceMinutes(1);
        await using var back = new MailListener();
        await Letterbox.WorkAsync(clinic, Route(back, tls: false));

        Assert.Equal(Letter.Subject, Assert.Single(back.Taken).Subject);
    }

    [Fact]
    public async Task A_mail_server_that_says_nothing_costs_a_letter_its_patience_and_no_more()
    {
        await using var silent = new BadMailServer(BadMailServer.Way.Hangs);
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );
        var since = Stopwatch.StartNew();

        await Letterbox.WorkAsync(clinic, Route(silent.Port));

        Assert.InRange(since.Elapsed, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(20));
        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((nameof(TimeoutException), null, null), (item.LastError, item.Fate, item.HandedAt));
    }

    [Fact]
    public async Task A_letter_refused_for_good_is_not_tried_again_and_nothing_of_it_is_kept()
    {
        await using var refusing = new BadMailServer(BadMailServer.Way.Refuses);
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        for (var day = 0; day < 3; day++)
        {
            await Letterbox.WorkAsync(clinic, Route(refusing.Port));
            clinic.Clock.AdvanceDays(1);
        }

        Assert.Equal(1, refusing.Asked);
        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((WorkOutcome.GivenUp, "SmtpCommandException 550"), (item.Fate, item.LastError));
        Assert.DoesNotContain("nuria", item.Body, StringComparison.Ordinal);
        Assert.DoesNotContain("Donnerstag", item.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_letter_refused_for_now_is_tried_again()
    {
        await using var busy = new BadMailServer(BadMailServer.Way.RefusesForNow);
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        await Letterbox.WorkAsync(clinic, Route(busy.Port));

        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((null, null, null, "SmtpCommandException 451"), (item.DoneAt, item.HandedAt, item.HeldUntil, item.LastError));
    }

    [Fact]
    public async Task A_letter_whose_line_broke_while_it_was_handed_over_stands_as_unsure_and_is_never_sent_again()
    {
        await using var dropping = new BadMailServer(BadMailServer.Way.DropsAfterData);
        await using var good = new MailListener();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        await Letterbox.WorkAsync(clinic, Route(dropping.Port));
        clinic.Clock.AdvanceDays(1);
        await Letterbox.WorkAsync(clinic, Route(good, tls: false));

        Assert.Equal(1, dropping.Heard);
        Assert.Empty(good.Taken);
        Assert.Equal(WorkOutcome.Unsure, Assert.Single(await Letterbox.ItemsAsync(clinic)).Fate);
    }

    [Fact]
    public async Task A_server_that_takes_the_letter_and_does_not_say_goodbye_has_taken_it()
    {
        await using var rude = new BadMailServer(BadMailServer.Way.DropsAfterAnswer);
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        await Letterbox.WorkAsync(clinic, Route(rude.Port));

        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((true, null, 1), (item.DoneAt is not null, item.Fate, rude.Heard));
    }

    /// <summary>RFC 5322, 3.6.4: "a single unique message identifier for a particular message".</summary>
    [Fact]
    public async Task A_letter_has_one_Message_ID_of_its_own_and_the_sites_however_often_it_is_tried()
    {
        await using var busy = new BadMailServer(BadMailServer.Way.RefusesForNow);
        await using var good = new MailListener();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.Add(WorkItemFactory.SendLetter(Letter, scene.Now))
        );

        await Letterbox.WorkAsync(clinic, Route(busy.Port));
        clinic.Clock.AdvanceMinutes(1);
        await Letterbox.WorkAsync(clinic, Route(good, tls: false));

        var id = Assert.Single(await Letterbox.ItemsAsync(clinic)).Id;
        Assert.Equal($"{id:N}@book.example", Assert.Single(good.Taken).MessageId);
        Assert.Contains($"{id:N}@book.example", busy.LastText, StringComparison.Ordinal);
    }

    private static SmtpMailSender Route(MailListener listener, bool tls) => Route(listener.Port, tls);

    private static SmtpMailSender Route(int port, bool tls = false) =>
        new(
            new MailSettings
            {
                Host = "127.0.0.1",
                Port = port,
                Tls = tls,
                From = "desk@practice.example",
            },
            new SiteAddress(
                new ConfigurationBuilder()
                    .AddInMemoryCollection(new Dictionary<string, string?> { [SiteAddress.Setting] = "https://book.example" })
                    .Build()
            )
        )
        {
            Patience = TimeSpan.FromSeconds(2),
        };
}
