using System.Buffers.Text;
using System.Security.Cryptography;
using HairClinic.Domain.Clients;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Shell;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>Single-use sign-in links: made here, looked up by the hash of their token here, and nowhere else.</summary>
public sealed class SignInLinkBook(SiteAddress site, IClock clock, IStringLocalizer<Words> words)
{
    public static readonly Duration Lifetime = Duration.FromMinutes(15);

    /// <summary>Adds a link for a client and the discreet letter that carries it; the caller saves.</summary>
    public void Post(ClinicDb db, Client client, string? language = null) => Post(db, client.Id, client.Email!, language);

    /// <summary>Answers whoever asked for a link: one letter if the address opens a page, nothing else; the caller saves.</summary>
    public async Task AnswerAsync(ClinicDb db, string email, CancellationToken cancellation)
    {
        var pages = await OwnPages.OfAsync(db, email, clock.GetCurrentInstant(), cancellation);
        if (pages.Count == 0)
            return;
        var first = pages[0].ClientId;
        var language = await db.ClientPreferences.Where(p => p.ClientId == first).Select(p => p.Language).FirstOrDefaultAsync(cancellation);
        Post(db, first, email, language);
    }

    /// <summary>Uses a link up. Two taps at once: one gets in.</summary>
    /// <returns>Whose link it was and where it was sent; null when it is unknown, used or too old.</returns>
    public async Task<(Guid PracticeId, Guid ClientId, string Email)?> UseUpAsync(
        ClinicDb unfenced,
        string token,
        CancellationToken cancellation
    )
    {
        var now = clock.GetCurrentInstant();
        var hash = Hash(token);
        var used = await unfenced
            .SignInLinks.Where(l => l.TokenHash == hash && l.UsedAt == null && l.ExpiresAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.UsedAt, now), cancellation);
        if (used == 0)
            return null;
        var link = await unfenced.SignInLinks.AsNoTracking().SingleAsync(l => l.TokenHash == hash, cancellation);
        return (link.PracticeId, link.ClientId, link.Email);
    }

    private void Post(ClinicDb db, Guid clientId, string email, string? language)
    {
        // A link that leads to nowhere, or elsewhere, is worse than none; pages say so before they ask for one.
        if (site.Url is not { } home)
            return;
        var now = clock.GetCurrentInstant();
        var token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));
        db.SignInLinks.Add(new SignInLink(Hash(token), db.PracticeId, clientId, email, now + Lifetime));
        db.WorkItems.Add(
            WorkItems.Send(Speaking.In(language, () => Letter(email, home, token)) with { For = clientId, Until = now + Lifetime }, now)
        );
    }

    private Letter Letter(string email, string home, string token) =>
        new(
            email,
            words["Your link"],
            $"""
            {words["Open this link to see your dates:"]}

            {home}/my-hair/open-link?token={token}

            {words["It works once, for 15 minutes. If you did not ask for it, nothing has happened: just delete this."]}
            """
        )
        {
            Kind = LetterKind.SignInLink,
        };

    private static byte[] Hash(string token) => SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(token));
}
