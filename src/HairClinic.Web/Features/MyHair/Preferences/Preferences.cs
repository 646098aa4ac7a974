using System.Buffers.Text;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;

namespace HairClinic.Web.Features.MyHair;

/// <summary>What a client chooses for themselves: letters, language, lengths, a calendar that follows, and where they are signed in.</summary>
public sealed class Preferences(ClinicDbFactory databases, ClientSessionStore signIns, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        var chosen = await db.ClientPreferences.AsNoTracking().SingleOrDefaultAsync(p => p.ClientId == client, cancellation);
        var email = await EmailAsync(db, cancellation);
        var follows = await db.CalendarFeeds.AnyAsync(f => f.ClientId == client && f.Email == email && f.EndedAt == null, cancellation);
        return new Screen(new Input(chosen?.Letters ?? true, chosen?.Language), follows);
    }

    /// <summary>Choosing the same twice is the same choice, so no key is needed.</summary>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        (await LoadOrAddAsync(db, current.Client.ClientId, cancellation)).SetLettersAndLanguage(
            input.Letters,
            Languages.KnownOrNull(input.Language)
        );
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>What they chose, to be changed; the usual where they chose nothing yet.</summary>
    internal static async Task<ClientPreference> LoadOrAddAsync(ClinicDb db, Guid client, CancellationToken cancellation) =>
        await db.ClientPreferences.SingleOrDefaultAsync(p => p.ClientId == client, cancellation)
        ?? db.ClientPreferences.Add(new ClientPreference(Guid.CreateVersion7(), client)).Entity;

    /// <summary>
    /// A new secret address for a calendar to follow; the one before stops. It lasts as long as the e-mail address they signed in by opens
    /// this page.
    /// </summary>
    /// <returns>The last part of the address, which is shown once.</returns>
    public async Task<string> StartCalendarFeedAsync(CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        var secret = RandomNumberGenerator.GetBytes(24);
        await using var db = databases.Open();
        var email = await EndFeedsAsync(db, client, cancellation);
        db.CalendarFeeds.Add(new CalendarFeed(Guid.CreateVersion7(), client, email, SHA256.HashData(secret), clock.GetCurrentInstant()));
        await db.SaveChangesAsync(cancellation);
        // The practice is in the address so that the secret is looked up behind its fence.
        return Base64Url.EncodeToString([.. current.Client.PracticeId.ToByteArray(), .. secret]);
    }

    public async Task UnfollowAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await EndFeedsAsync(db, current.Client.ClientId, cancellation);
        await db.SaveChangesAsync(cancellation);
    }

    public Task SignOutAsync(bool everywhere, CancellationToken cancellation) => signIns.EndAsync(current.Client, everywhere, cancellation);

    // Those of this address: whoever else looks after the client keeps theirs.
    private async Task<string> EndFeedsAsync(ClinicDb db, Guid client, CancellationToken cancellation)
    {
        var email = await EmailAsync(db, cancellation);
        var open = await db
            .CalendarFeeds.Where(f => f.ClientId == client && f.Email == email && f.EndedAt == null)
            .ToListAsync(cancellation);
        open.ForEach(f => f.End(clock.GetCurrentInstant()));
        return email;
    }

    private Task<string> EmailAsync(ClinicDb db, CancellationToken cancellation) =>
        db.ClientSignIns.Where(s => s.Id == current.Client.SignInId).Select(s => s.Email).SingleAsync(cancellation);

    /// <param name="Follows">Whether a calendar may fetch the dates.</param>
    public sealed record Screen(Input Chosen, bool Follows);

    public sealed record Input(bool Letters, string? Language);
}
