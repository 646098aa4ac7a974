using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Mail;

/// <summary>
/// Which way letters leave here. A practice of one's own without a mail server sends none and keeps none: a letter in a folder is a key to
/// somebody's page. Only the demo, and whoever names a folder, have them written down.
/// </summary>
public sealed class MailSenderSelector(MailSettings settings, SmtpMailSender server, FolderMailSender folder, PracticeJobRunner jobs)
    : IMailSender
{
    public async Task<MailWay> WayAsync(CancellationToken cancellation) =>
        settings.Host is not null ? MailWay.Server
        : await IsDemoAsync(cancellation) ? MailWay.Demo
        : settings.FolderNamed ? MailWay.Folder
        : MailWay.None;

    /// <exception cref="NoMailWayException">It can be sent nowhere.</exception>
    public async Task SendAsync(Letter letter, LetterDelivery posting, CancellationToken cancellation)
    {
        IMailSender route = await WayAsync(cancellation) switch
        {
            MailWay.Server => server,
            MailWay.Folder or MailWay.Demo => folder,
            _ => throw new NoMailWayException(),
        };
        await route.SendAsync(letter, posting, cancellation);
    }

    // The demo is all there is: beside it a practice's own letters would lie in the same folder.
    private async Task<bool> IsDemoAsync(CancellationToken cancellation) =>
        await jobs.PracticeIdsAsync(cancellation) is [var only]
        && await jobs.RunJobAsync(
            only,
            "letters",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await db.PracticeSettings.AnyAsync(s => s.IsDemo, cancellation);
            }
        );
}

public interface IMailSender
{
    /// <exception cref="LetterUnsureException">The connection broke while it was being handed over: it may have been sent or not.</exception>
    Task SendAsync(Letter letter, LetterDelivery posting, CancellationToken cancellation);
}

/// <summary>What becomes of a letter.</summary>
public enum MailWay
{
    /// <summary>No mail server is set: it is not sent, and not kept either.</summary>
    None,

    /// <summary>The practice's mail server takes it.</summary>
    Server,

    /// <summary>It becomes a file in the folder that somebody named, to try things out.</summary>
    Folder,

    /// <summary>It becomes a file that the demo shows to anybody.</summary>
    Demo,
}

/// <summary>There is no way for a letter to leave, and trying again changes nothing.</summary>
public sealed class NoMailWayException() : Exception("No mail server is set.");
