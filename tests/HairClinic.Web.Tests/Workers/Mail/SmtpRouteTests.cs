using HairClinic.Web.Workers;
using HairClinic.Web.Workers.Mail;

namespace HairClinic.Web.Tests.Workers.Mail;

public sealed class SmtpRouteTests(PgServer server)
{
    private static readonly Letter Letter = new("nuria@example.test", "Ihr Termin – Donnerstag", "Überblick:\nDonnerstag um zehn.");

    [Fact]
    public async Task A_letter_asked_for_in_the_book_arrives_at_the_mail_server_as_it_was_written()
    {
        await using var listener = new MailListener();
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.Db.WorkItems.Add(WorkItems.Send(Letter, scene.Now)));

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
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.Db.WorkItems.Add(WorkItems.Send(Letter, scene.Now)));

        await Letterbox.WorkAsync(clinic, Route(listener, tls: true));

        Assert.Empty(listener.Taken);
        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((null, 1), (item.DoneAt, item.Attempts));
    }

    [Fact]
    public async Task While_the_mail_server_is_away_the_letter_waits_for_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.Db.WorkItems.Add(WorkItems.Send(Letter, scene.Now)));
        var gone = new MailListener();
        await gone.DisposeAsync();
        await Letterbox.WorkAsync(clinic, Route(gone, tls: false));
        clinic.Clock.AdvanceMinutes(1);
        await using var back = new MailListener();
        await Letterbox.WorkAsync(clinic, Route(back, tls: false));

        Assert.Equal(Letter.Subject, Assert.Single(back.Taken).Subject);
    }

    private static SmtpRoute Route(MailListener listener, bool tls) =>
        new(
            new MailSettings
            {
                Host = "127.0.0.1",
                Port = listener.Port,
                Tls = tls,
                From = "desk@practice.example",
            }
        );
}
