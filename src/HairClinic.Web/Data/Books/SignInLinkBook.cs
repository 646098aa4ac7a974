using System.Buffers.Text;
using System.Security.Cryptography;
using HairClinic.Domain.Clients;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Workers;
using HairClinic.Web.Workers.Mail;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>Single-use sign-in links: made here, looked up by the hash of their token here, and nowhere else.</summary>
public sealed class SignInLinkBook(MailSettings mail, IClock clock)
{
    public static readonly Duration Lifetime = Duration.FromMinutes(15);

    /// <summary>Adds a link for a client and the discreet letter that carries it; the caller saves.</summary>
    public void Post(ClinicDb db, Client client)
    {
        var now = clock.GetCurrentInstant();
        var token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));
        db.SignInLinks.Add(new SignInLink(Hash(token), db.PracticeId, client.Id, now + Lifetime));
        db.WorkItems.Add(
            WorkItems.Send(
                new Letter(
                    client.Email!,
                    "Your link",
                    $"""
                    Open this link to see your dates:

                    {mail.SiteUrl}/my-hair/open-link?token={token}

                    It works once, for 15 minutes. If you did not ask for it, nothing has happened: just delete this.
                    """
                ),
                now
            )
        );
    }

    /// <summary>Uses a link up. Two taps at once: one gets in.</summary>
    /// <returns>Whose link it was; null when it is unknown, used or too old.</returns>
    public async Task<(Guid PracticeId, Guid ClientId)?> UseUpAsync(ClinicDb unfenced, string token, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var hash = Hash(token);
        var used = await unfenced
            .SignInLinks.Where(l => l.TokenHash == hash && l.UsedAt == null && l.ExpiresAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.UsedAt, now), cancellation);
        if (used == 0)
            return null;
        var link = await unfenced.SignInLinks.AsNoTracking().SingleAsync(l => l.TokenHash == hash, cancellation);
        return (link.PracticeId, link.ClientId);
    }

    private static byte[] Hash(string token) => SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(token));
}
