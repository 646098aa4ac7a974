using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Accounts;

/// <summary>The devices clients are signed in on: opened by a link, asked at each request, ended one by one or all at once.</summary>
public sealed class ClientSessionStore(PracticeJobRunner jobs, IClock clock)
{
    /// <returns>Null when the address opens no page any more.</returns>
    public Task<ActiveClientSignIn?> OpenAsync(Guid practice, Guid client, string email, bool invitation, CancellationToken cancellation) =>
        InPracticeAsync<ActiveClientSignIn?>(
            practice,
            async db =>
            {
                var now = clock.GetCurrentInstant();
                var pages = await OwnPageLookup.ByEmailAsync(db, email, now, cancellation);
                if (pages.Count == 0)
                    return null;
                var shown = pages.FirstOrDefault(p => p.ClientId == client) ?? pages[0];
                var opened = new ClientSignIn(Guid.NewGuid(), shown.ClientId, email, now, invitation);
                db.ClientSignIns.Add(opened);
                await db.SaveChangesAsync(cancellation);
                return new(new ClientActor(practice, shown.ClientId, opened.Id), pages.Count > 1, shown.OpensAll && !invitation);
            }
        );

    /// <summary>Whether a sign-in still holds, and whose page it shows: a merge turned it to the record that was kept, or ended it.</summary>
    /// <returns>Null when it was ended or opens nothing any more.</returns>
    public Task<ActiveClientSignIn?> CheckAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync<ActiveClientSignIn?>(
            actor.PracticeId,
            async db =>
            {
                var signIn = await db
                    .ClientSignIns.AsNoTracking()
                    .SingleOrDefaultAsync(s => s.Id == actor.SignInId && s.EndedAt == null, cancellation);
                if (signIn is null)
                    return null;
                var pages = await OwnPageLookup.ByEmailAsync(db, signIn.Email, clock.GetCurrentInstant(), cancellation);
                return pages.FirstOrDefault(p => p.ClientId == signIn.ClientId) is { } shown
                    ? new(actor with { ClientId = shown.ClientId }, pages.Count > 1, shown.OpensAll && !signIn.Invitation)
                    : null;
            }
        );

    /// <summary>Whether this device was let in a moment ago, by a link its reader asked for.</summary>
    public Task<bool> IsFreshAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync(
            actor.PracticeId,
            db =>
            {
                var since = clock.GetCurrentInstant() - SessionStore.Fresh;
                return db.ClientSignIns.AnyAsync(
                    s => s.Id == actor.SignInId && s.EndedAt == null && !s.Invitation && s.OpenedAt > since,
                    cancellation
                );
            }
        );

    /// <summary>All pages this sign-in may show.</summary>
    public Task<IReadOnlyList<OwnPage>> PagesAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync<IReadOnlyList<OwnPage>>(
            actor.PracticeId,
            async db =>
                await db.ClientSignIns.SingleOrDefaultAsync(s => s.Id == actor.SignInId && s.EndedAt == null, cancellation) is { } signIn
                    ? await OwnPageLookup.ByEmailAsync(db, signIn.Email, clock.GetCurrentInstant(), cancellation)
                    : []
        );

    /// <summary>Turns this device to another page of the household.</summary>
    /// <returns>Null when that page is not theirs.</returns>
    public Task<ActiveClientSignIn?> SwitchClientAsync(ClientActor actor, Guid clientId, CancellationToken cancellation) =>
        InPracticeAsync<ActiveClientSignIn?>(
            actor.PracticeId,
            async db =>
            {
                var signIn = await db.ClientSignIns.SingleOrDefaultAsync(s => s.Id == actor.SignInId && s.EndedAt == null, cancellation);
                if (signIn is null)
                    return null;
                var pages = await OwnPageLookup.ByEmailAsync(db, signIn.Email, clock.GetCurrentInstant(), cancellation);
                if (pages.FirstOrDefault(p => p.ClientId == clientId) is not { } shown)
                    return null;
                signIn.SwitchClient(clientId);
                await db.SaveChangesAsync(cancellation);
                return new(actor with { ClientId = clientId }, pages.Count > 1, shown.OpensAll && !signIn.Invitation);
            }
        );

    /// <summary>The language chosen by the client whose page is shown.</summary>
    public Task<string?> LanguageAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync(
            actor.PracticeId,
            db => db.ClientPreferences.Where(p => p.ClientId == actor.ClientId).Select(p => p.Language).FirstOrDefaultAsync(cancellation)
        );

    /// <summary>Signs this device out, or every device and every calendar that came by the same address.</summary>
    public Task<int> EndAsync(ClientActor actor, bool everywhere, CancellationToken cancellation) =>
        InPracticeAsync(
            actor.PracticeId,
            async db =>
            {
                var here = await db.ClientSignIns.SingleOrDefaultAsync(s => s.Id == actor.SignInId, cancellation);
                if (here is null)
                    return 0;
                var now = clock.GetCurrentInstant();
                here.End(now);
                if (everywhere)
                {
                    var devices = await db.ClientSignIns.Where(s => s.Email == here.Email && s.EndedAt == null).ToListAsync(cancellation);
                    var feeds = await db.CalendarFeeds.Where(f => f.Email == here.Email && f.EndedAt == null).ToListAsync(cancellation);
                    devices.ForEach(s => s.End(now));
                    feeds.ForEach(f => f.End(now));
                }
                return await db.SaveChangesAsync(cancellation);
            }
        );

    private Task<T> InPracticeAsync<T>(Guid practice, Func<ClinicDb, Task<T>> work) =>
        jobs.RunJobAsync(
            practice,
            "client sign-ins",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await work(db);
            }
        );
}

/// <summary>A client's sign-in as it holds now.</summary>
/// <param name="Household">Whether its address opens more than one page.</param>
/// <param name="OpensAll">Whether its address is confirmed for the page it shows; else it opens dates only.</param>
public sealed record ActiveClientSignIn(ClientActor Actor, bool Household, bool OpensAll);
