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
        using var client = new SmtpClient();
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
        await client.SendAsync(message, cancellation);
        await client.DisconnectAsync(quit: true, cancellation);
    }
}
