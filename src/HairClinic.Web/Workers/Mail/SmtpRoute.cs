using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace HairClinic.Web.Workers.Mail;

/// <summary>Through the practice's own mail server.</summary>
public sealed class SmtpRoute(MailSettings settings) : IMailRoute
{
    public async Task SendAsync(Letter letter, CancellationToken cancellation)
    {
        using var message = new MimeMessage();
        message.From.Add(new MailboxAddress(settings.FromName, settings.From));
        message.To.Add(MailboxAddress.Parse(letter.To));
        message.Subject = letter.Subject;
        message.Body = new TextPart("plain") { Text = letter.Text };
        using var client = new Client();
        await OpenAsync(client, cancellation);
        await client.SendAsync(message, cancellation);
        await client.DisconnectAsync(quit: true, cancellation);
    }

    /// <summary>Goes as far as naming the sender and sends nothing: whether a letter would be taken now.</summary>
    /// <remarks>It throws as sending would.</remarks>
    public async Task TryAsync(CancellationToken cancellation)
    {
        using var client = new Client();
        await OpenAsync(client, cancellation);
        await client.NameSenderAsync(settings.From, cancellation);
        await client.DisconnectAsync(quit: true, cancellation);
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
}
