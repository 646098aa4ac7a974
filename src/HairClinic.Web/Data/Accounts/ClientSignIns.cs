using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>The devices clients are signed in on: opened by a link, asked at each request, ended one by one or all at once.</summary>
public sealed class ClientSignIns(PracticeJobs jobs, IClock clock)
{
    /// <returns>The actor of the new sign-in and whether it opens more than one page; null when the address opens none any more.</returns>
    public Task<(ClientActor Actor, bool Household)?> OpenAsync(Guid practice, Guid client, string email, CancellationToken cancellation) =>
        InPracticeAsync<(ClientActor, bool)?>(
            practice,
            async db =>
            {
                var now = clock.GetCurrentInstant();
                var pages = await OwnPages.OfAsync(db, email, now, cancellation);
                if (pages.Count == 0)
                    return null;
                var shown = pages.FirstOrDefault(p => p.ClientId == client) ?? pages[0];
                var opened = new ClientSignIn(Guid.NewGuid(), shown.ClientId, email, now);
                db.ClientSignIns.Add(opened);
                await db.SaveChangesAsync(cancellation);
                return (new ClientActor(practice, shown.ClientId, opened.Id), pages.Count > 1);
            }
        );

    /// <summary>Whether a sign-in still holds. One for a record that was folded leads to the record that was kept.</summary>
    /// <returns>Null when it was ended or opens nothing any more.</returns>
    public Task<(ClientActor Actor, bool Household)?> CheckAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync<(ClientActor, bool)?>(
            actor.PracticeId,
            async db =>
            {
                var found = await (
                    from signIn in db.ClientSignIns
                    join client in db.Clients on signIn.ClientId equals client.Id
                    where signIn.Id == actor.SignInId && signIn.EndedAt == null
                    select new
                    {
                        SignIn = signIn,
                        Kept = db.Clients.FirstOrDefault(k => k.Id == client.MergedIntoId),
                        client.Email,
                    }
                ).SingleOrDefaultAsync(cancellation);
                if (found is null)
                    return null;
                var email = found.SignIn.Email;
                if (found.Kept is { Email: { } address } kept && string.Equals(found.Email, email, StringComparison.OrdinalIgnoreCase))
                {
                    email = address;
                    found.SignIn.Follow(kept.Id, address);
                    await db.SaveChangesAsync(cancellation);
                }
                var pages = await OwnPages.OfAsync(db, email, clock.GetCurrentInstant(), cancellation);
                return pages.Any(p => p.ClientId == found.SignIn.ClientId)
                    ? (actor with { ClientId = found.SignIn.ClientId }, pages.Count > 1)
                    : null;
            }
        );

    /// <summary>Whether this device was let in by a link a moment ago.</summary>
    public Task<bool> IsFreshAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync(
            actor.PracticeId,
            db =>
            {
                var since = clock.GetCurrentInstant() - SessionBook.Fresh;
                return db.ClientSignIns.AnyAsync(s => s.Id == actor.SignInId && s.EndedAt == null && s.OpenedAt > since, cancellation);
            }
        );

    /// <summary>All pages this sign-in may show.</summary>
    public Task<IReadOnlyList<OwnPage>> PagesAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync<IReadOnlyList<OwnPage>>(
            actor.PracticeId,
            async db =>
                await db.ClientSignIns.SingleOrDefaultAsync(s => s.Id == actor.SignInId && s.EndedAt == null, cancellation) is { } signIn
                    ? await OwnPages.OfAsync(db, signIn.Email, clock.GetCurrentInstant(), cancellation)
                    : []
        );

    /// <summary>Turns this device to another page of the household.</summary>
    /// <returns>Null when that page is not theirs.</returns>
    public Task<ClientActor?> ShowAsync(ClientActor actor, Guid clientId, CancellationToken cancellation) =>
        InPracticeAsync<ClientActor?>(
            actor.PracticeId,
            async db =>
            {
                var signIn = await db.ClientSignIns.SingleOrDefaultAsync(s => s.Id == actor.SignInId && s.EndedAt == null, cancellation);
                if (signIn is null)
                    return null;
                var pages = await OwnPages.OfAsync(db, signIn.Email, clock.GetCurrentInstant(), cancellation);
                if (pages.All(p => p.ClientId != clientId))
                    return null;
                signIn.Show(clientId);
                await db.SaveChangesAsync(cancellation);
                return actor with { ClientId = clientId };
            }
        );

    /// <summary>The language chosen by the client whose page is shown.</summary>
    public Task<string?> LanguageAsync(ClientActor actor, CancellationToken cancellation) =>
        InPracticeAsync(
            actor.PracticeId,
            db => db.ClientPreferences.Where(p => p.ClientId == actor.ClientId).Select(p => p.Language).FirstOrDefaultAsync(cancellation)
        );

    /// <summary>Signs this device out, or every device that came by the same address.</summary>
    public Task<int> EndAsync(ClientActor actor, bool everywhere, CancellationToken cancellation) =>
        InPracticeAsync(
            actor.PracticeId,
            async db =>
            {
                var here = await db.ClientSignIns.SingleOrDefaultAsync(s => s.Id == actor.SignInId, cancellation);
                if (here is null)
                    return 0;
                var ending = everywhere
                    ? await db.ClientSignIns.Where(s => s.Email == here.Email && s.EndedAt == null).ToListAsync(cancellation)
                    : [here];
                ending.ForEach(s => s.End(clock.GetCurrentInstant()));
                return await db.SaveChangesAsync(cancellation);
            }
        );

    private Task<T> InPracticeAsync<T>(Guid practice, Func<ClinicDb, Task<T>> work) =>
        jobs.RunAsync(
            practice,
            "client sign-ins",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await work(db);
            }
        );
}
