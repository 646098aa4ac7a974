using HairClinic.Web.AccessLog;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.WebUtilities;

namespace HairClinic.Web.Features.Accounts;

/// <summary>A person's way in: a name to sign in with, and either a first password or a link with which they set their own.</summary>
public sealed class GiveAccount(
    ClinicDbFactory databases,
    WriteOnce writes,
    AccountFactory accounts,
    CurrentActor current,
    PracticeJobRunner jobs,
    StepUpCheck check,
    AccessLogStore log,
    IClock clock
)
{
    /// <returns>Null where there is no such person here, or not one whom this manager may let in.</returns>
    public async Task<Screen?> OpenAsync(Guid personId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var person = await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.Id == personId && !p.Left, cancellation);
        if (person is null || !StaffPermissions.MayManagePerson(current.Person, person.Id, person.Role))
            return null;
        var user = await AccountOf(db, personId).AsNoTracking().SingleOrDefaultAsync(cancellation);
        var hasPasskey = user is not null && await db.UserPasskeys.AnyAsync(p => p.UserId == user.Id, cancellation);
        return new Screen(
            person.Name,
            user?.UserName,
            user?.Email,
            user?.PasswordHash is not null,
            hasPasskey || user?.TwoFactorEnabled == true
        );
    }

    /// <exception cref="Refusal">The name is taken, the password is too short, or this person is not theirs to let in.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            // A hash of what was sent is kept: a password must not be in it, for it could be guessed from there.
            var sent = input with
            {
                Password = string.IsNullOrEmpty(input.Password) ? null : "*",
            };
            return await writes.RunAsync(key, nameof(GiveAccount), sent, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, AccountFactory.NameOnce))
        {
            throw new Refusal("Somebody signs in as {0} already. Choose another name.", input.Name);
        }
    }

    /// <summary>
    /// The one-time link. It is made apart from the saved write: what is saved with a write's key can be read in the
    /// database, and this must not be.
    /// </summary>
    /// <returns>Path and query, good for one day and one use.</returns>
    public Task<string> IssuePasswordLinkAsync(Guid userId, CancellationToken cancellation) =>
        jobs.RunAsAsync(
            current.Actor,
            async services =>
            {
                var users = services.GetRequiredService<UserManager<AppUser>>();
                var user = await users.FindByIdAsync(userId.ToString());
                if (user is null || user.PracticeId != current.Actor.PracticeId)
                    throw new Refusal("There is no such account.");
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await NotifyAsync(db, user, user.Email, AccountNotices.LinkMade, cancellation);
                await db.SaveChangesAsync(cancellation);
                await db.Database.CurrentTransaction!.CommitAsync(cancellation);
                var token = WebEncoders.Base64UrlEncode(Encoding.UTF8.GetBytes(await users.GeneratePasswordResetTokenAsync(user)));
                return $"/set-password?for={user.Id}&token={token}";
            }
        );

    /// <summary>Signs the person out everywhere: a tablet was lost, or a screen was left open.</summary>
    public async Task EndSessionsAsync(Guid key, Guid personId, CancellationToken cancellation) =>
        await writes.RunAsync(
            key,
            nameof(EndSessionsAsync),
            personId,
            async db =>
            {
                await RefuseOthersAsync(db, personId, cancellation);
                await PersonSessions.EndAllAsync(db, personId, clock.GetCurrentInstant(), cancellation);
                return personId;
            },
            cancellation
        );

    /// <summary>
    /// The phone is lost and the recovery codes with it: codes app, recovery codes and passkeys go, and every screen of theirs closes. The
    /// password alone opens then, so it is done only to someone who stands before you, and their own letter says so.
    /// </summary>
    /// <exception cref="Refusal">Not theirs to reset, or they did not prove who they are themselves.</exception>
    public async Task ResetSecondFactorAsync(Guid key, Guid personId, CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        var userId = await writes.RunAsync(
            key,
            nameof(ResetSecondFactorAsync),
            personId,
            async db =>
            {
                await RefuseOthersAsync(db, personId, cancellation);
                await PersonSessions.EndAllAsync(db, personId, clock.GetCurrentInstant(), cancellation);
                return await AccountOf(db, personId).Select(u => u.Id).SingleAsync(cancellation);
            },
            cancellation
        );
        await jobs.RunAsAsync(current.Actor, services => RemoveFactorsAsync(services, userId, cancellation));
    }

    private static async Task<bool> RemoveFactorsAsync(IServiceProvider services, Guid userId, CancellationToken cancellation)
    {
        var users = services.GetRequiredService<UserManager<AppUser>>();
        var user = (await users.FindByIdAsync(userId.ToString()))!;
        await services.GetRequiredService<SecondFactorStore>().RemoveAllAsync(user, cancellation);
        await services
            .GetRequiredService<AccountNotices>()
            .NotifyAsync(user, "Your codes app and passkeys were reset by whoever manages your place of work.", cancellation);
        return true;
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        await RefuseOthersAsync(db, input.PersonId, cancellation);
        var user = await AccountOf(db, input.PersonId).SingleOrDefaultAsync(cancellation);
        if (user is null)
        {
            user = await accounts.BuildAsync(db.PracticeId, input.PersonId, input.Name, input.Email, input.Password);
            db.Users.Add(user);
            await NotifyAsync(db, user, before: null, what: "", cancellation);
        }
        else
        {
            var (name, email, hash) = (user.UserName, user.Email, user.PasswordHash);
            accounts.SetNameAndEmail(user, input.Name, input.Email);
            await accounts.SetPasswordAsync(user, input.Password);
            user.ConcurrencyStamp = Guid.NewGuid().ToString();
            if ((name, email, hash) != (user.UserName, user.Email, user.PasswordHash))
                await NotifyAsync(db, user, email, AccountNotices.SetByAnother, cancellation);
        }
        return new Outcome(user.Id);
    }

    // A line in the access log under who does it, and a letter to the address that stood: saved with the change, so that neither can
    // be left out.
    private async Task NotifyAsync(ClinicDb db, AppUser user, string? before, string what, CancellationToken cancellation)
    {
        await db.Database.BeginTransactionAsync(cancellation);
        await log.NoteAsync(db, AccessAction.ChangedSignIn, clientId: null, user.PersonId, cancellation: cancellation);
        if (user.PersonId != current.Actor.Id && AccountNotices.LetterTo(before, what) is { } letter)
            db.WorkItems.Add(WorkItemFactory.SendLetter(letter, clock.GetCurrentInstant()));
    }

    private async Task RefuseOthersAsync(ClinicDb db, Guid personId, CancellationToken cancellation)
    {
        var person = await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.Id == personId && !p.Left, cancellation);
        if (person is null || !StaffPermissions.MayManagePerson(current.Person, person.Id, person.Role))
            throw new Refusal("Only an owner lets owners and managers in.");
    }

    private static IQueryable<AppUser> AccountOf(ClinicDb db, Guid personId) =>
        db.Users.Where(u => u.PracticeId == db.PracticeId && u.PersonId == personId);

    /// <param name="Name">The name they sign in with; null when they have no account yet.</param>
    /// <param name="HasMore">A codes app or a passkey.</param>
    public sealed record Screen(string PersonName, string? Name, string? Email, bool HasPassword, bool HasMore);

    public sealed record Input
    {
        public Guid PersonId { get; set; }
        public string Name { get; set; } = "";
        public string? Email { get; set; }

        /// <summary>A first password, told by mouth; empty when a link is to be handed over.</summary>
        public string? Password { get; set; }
    }

    public sealed record Outcome(Guid UserId);
}
