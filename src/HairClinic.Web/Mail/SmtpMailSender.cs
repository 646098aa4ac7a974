using HairClinic.Web.Data.Work;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace HairClinic.Web.Mail;

/// <summary>Through the practice's own mail server.</summary>
public sealed class SmtpMailSender(MailSettings settings, SiteAddress site) : IMailSender
{
    /// <summary>A letter takes no longer than this, whatever the mail server does.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(30);

    public async Task SendAsync(Letter letter, LetterDelivery posting, CancellationToken cancellation)
    {
        using var message = new MimeMessage();
        message.MessageId = MessageIdOf(posting.Id);
        message.From.Add(new MailboxAddress(settings.FromName, settings.From));
        message.To.Add(MailboxAddress.Parse(letter.To));
        message.Subject = letter.Subject;
        message.Body = new TextPart("plain") { Text = letter.Text };
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(Patience);
        using var client = new Client();
        var begun = new Begun();
        try
        {
            await OpenAsync(client, limit.Token);
            await posting.HandingOver();
            await client.SendAsync(message, limit.Token, begun);
        }
        // Any answer is definite. Without one, once the message was sent, the outcome is unknown.
        catch (Exception e) when (begun.Is && e is not SmtpCommandException)
        {
            throw new LetterUnsureException(e);
        }
        catch (OperationCanceledException e) when (!cancellation.IsCancellationRequested)
        {
            throw new TimeoutException("The mail server took too long.", e);
        }
        await LeaveAsync(client, limit.Token);
    }

    /// <summary>Goes as far as naming the sender and sends nothing: whether a letter would be taken now.</summary>
    /// <remarks>It throws as sending would.</remarks>
    public async Task ProbeAsync(CancellationToken cancellation)
    {
        using var client = new Client();
        await OpenAsync(client, cancellation);
        await client.NameSenderAsync(settings.From, cancellation);
        await LeaveAsync(client, cancellation);
    }

    /// <summary>Of a letter that is tried twice both carry the same, so that whoever gets both sees that they are one.</summary>
    private string MessageIdOf(Guid id)
    {
        var host = site.Url is { } url ? new Uri(url).IdnHost : MailboxAddress.Parse(settings.From).Domain;
        return $"{id:N}@{host.Trim('[', ']')}";
    }

    private async Task OpenAsync(SmtpClient client, CancellationToken cancellation)
    {
        // Never "if the server offers it": whoever sits in between could take the offer away and read along.
        var security = (settings.Tls, settings.Port) switch
        {
            (false, _) => SecureSocketOptions.None,
            (_, 465) => SecureSocketOptions.SslOnConnect,
            _ => SecureSocketOptions.StartTls,
        };
        await client.ConnectAsync(settings.Host!, settings.Port, security, cancellation);
        if (settings.User is { } user)
            await client.AuthenticateAsync(user, settings.Password ?? "", cancellation);
    }

    // What was wanted is done: a server that does not say goodbye changes nothing.
    private static async Task LeaveAsync(SmtpClient client, CancellationToken cancellation)
    {
        try
        {
            await client.DisconnectAsync(quit: true, cancellation);
        }
        catch (Exception e) when (e is IOException or OperationCanceledException or ProtocolException or CommandException) { }
    }

    private sealed class Client : SmtpClient
    {
        /// <summary>RFC 5321, 4.1.1.2 and 4.1.1.5: names the sender, then takes it back.</summary>
        public async Task NameSenderAsync(string address, CancellationToken cancellation)
        {
            var answer = await SendCommandAsync($"MAIL FROM:<{address}>", cancellation);
            if ((int)answer.StatusCode is < 200 or >= 300)
                throw new SmtpCommandException(SmtpErrorCode.SenderNotAccepted, answer.StatusCode, answer.Response);
            await SendCommandAsync("RSET", cancellation);
        }
    }

    private sealed class Begun : ITransferProgress
    {
        public bool Is { get; private set; }

        public void Report(long bytesTransferred, long totalSize) => Is = true;

        public void Report(long bytesTransferred) => Is = true;
    }
}

/// <summary>The letter was being handed over when the line broke, or answers stopped: it may have gone, or not.</summary>
public sealed class LetterUnsureException(Exception inner) : Exception("Nobody knows whether the letter went.", inner);
