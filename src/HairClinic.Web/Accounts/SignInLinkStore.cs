using System.Buffers.Text;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Language;

namespace HairClinic.Web.Accounts;

/// <summary>Single-use sign-in links: made here, looked up by the hash of their token here, and nowhere else.</summary>
public sealed class SignInLinkStore(SiteAddress site, IClock clock, IStringLocalizer<Words> words)
{
    public static readonly Duration Lifetime = Duration.FromMinutes(15);

    /// <summary>How long an invitation can be opened: whoever reads letters in the evening, or at the weekend, finds it alive.</summary>
    public static readonly Duration InvitationLifetime = Duration.FromDays(7);

    /// <summary>Invites a client to their own page: one letter, unasked. The previous link becomes invalid; the caller saves.</summary>
    public async Task InviteClientAsync(ClinicDb db, Client client, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var before = await db
            .SignInLinks.Where(l => l.PracticeId == db.PracticeId && l.ClientId == client.Id && l.Invitation && l.UsedAt == null)
            .ToListAsync(cancellation);
        before.ForEach(l => l.UseUp(now));
        var language =
            await LanguageAsync(db, client.Id, cancellation)
            ?? await db.PracticeSettings.Select(s => s.Culture).FirstOrDefaultAsync(cancellation);
        AddLinkAndLetter(db, client.Id, client.Email!, language, invitation: true);
    }

    /// <summary>Answers a request for a link: one letter if the address opens a page, nothing otherwise; the caller saves.</summary>
    public async Task AnswerRequestAsync(ClinicDb db, string email, CancellationToken cancellation)
    {
        var pages = await OwnPageLookup.ByEmailAsync(db, email, clock.GetCurrentInstant(), cancellation);
        if (pages.Count == 0)
            return;
        AddLinkAndLetter(db, pages[0].ClientId, email, await LanguageAsync(db, pages[0].ClientId, cancellation));
    }

    /// <summary>Redeems a link. Of two taps at once, one gets in.</summary>
    /// <returns>Null when it is unknown, used or too old.</returns>
    public async Task<SignInLink?> UseUpAsync(ClinicDb unfenced, string token, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var hash = Hash(token);
        var used = await unfenced
            .SignInLinks.Where(l => l.TokenHash == hash && l.UsedAt == null && l.ExpiresAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.UsedAt, now), cancellation);
        if (used == 0)
            return null;
        return await unfenced.SignInLinks.AsNoTracking().SingleAsync(l => l.TokenHash == hash, cancellation);
    }

    /// <summary>Adds a link and the discreet letter that carries it; the caller saves.</summary>
    public void AddLinkAndLetter(ClinicDb db, Guid clientId, string email, string? language = null, bool invitation = false)
    {
        // A link that leads to nowhere, or elsewhere, is worse than none; pages say so before they ask for one.
        if (site.Url is not { } home)
            return;
        var now = clock.GetCurrentInstant();
        var token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));
        var until = now + (invitation ? InvitationLifetime : Lifetime);
        db.SignInLinks.Add(new SignInLink(Hash(token), db.PracticeId, clientId, email, until, invitation));
        var letter = CultureRunner.WithCulture(language, () => invitation ? Invitation(email, home, token) : Letter(email, home, token));
        db.WorkItems.Add(WorkItemFactory.SendLetter(letter with { For = clientId, Until = until }, now));
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

    private Letter Invitation(string email, string home, string token) =>
        new(
            email,
            words["Your link"],
            $"""
            {words["Your salon sends you this link to your dates:"]}

            {home}/my-hair/open-link?token={token}

            {words[
                "It works once, within {0} days. After that, or for everything else that is kept about you, ask for a link of your own:",
                (int)InvitationLifetime.TotalDays
            ]}

            {home}/my-hair/ask-link
            """
        )
        {
            Kind = LetterKind.Invitation,
        };

    private static Task<string?> LanguageAsync(ClinicDb db, Guid clientId, CancellationToken cancellation) =>
        db.ClientPreferences.Where(p => p.ClientId == clientId).Select(p => p.Language).FirstOrDefaultAsync(cancellation);

    private static byte[] Hash(string token) => SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(token));
}
