using HairClinic.Web.AccessLog;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.WebUtilities;

namespace HairClinic.Web.Features.Accounts;

/// <summary>
/// An owner whom nobody else can let in gets a link that sets a new password. Asked for at the machine's own command line and at no
/// address: who may give that command there may read the database as well.
/// </summary>
public sealed class OwnerLink(
    ClinicDbFactory databases,
    UserManager<AppUser> users,
    SecondFactorStore factor,
    AccountNotices notices,
    AccessLogStore log,
    IClock clock
)
{
    /// <summary>How the access log calls whoever does this.</summary>
    public const string Job = "command line";

    /// <summary>Ends their sign-ins and makes the link. The old password opens until a new one is set.</summary>
    /// <param name="name">The name they sign in with; null where there is one owner only.</param>
    /// <param name="dropFactors">Codes app, recovery codes and passkeys are lost too: the new password alone opens then.</param>
    /// <exception cref="Refusal">It is not clear whose, or nobody who is an owner signs in so.</exception>
    public async Task<Outcome> SaveAsync(string? name, bool dropFactors, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var owners = await (
            from person in db.People
            where person.Role == StaffRole.Owner && !person.Left
            join account in db.Users on person.Id equals account.PersonId
            where account.PracticeId == db.PracticeId
            orderby account.UserName
            select new Found(account.Id, person.Id, person.Name, account.UserName!)
        ).ToListAsync(cancellation);
        var owner = Choose(owners, name);
        await using (var transaction = await db.Database.BeginTransactionAsync(cancellation))
        {
            var what = dropFactors ? "new password, second factor taken off" : "new password";
            await log.NoteAsync(db, AccessAction.LetOwnerIn, clientId: null, owner.PersonId, what, cancellation);
            await PersonSessions.EndAllAsync(db, owner.PersonId, clock.GetCurrentInstant(), cancellation);
            await db.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }
        var user = (await users.FindByIdAsync(owner.UserId.ToString()))!;
        if (dropFactors)
            await factor.RemoveAllAsync(user, cancellation);
        await notices.NotifyAsync(user, Letter(dropFactors), cancellation);
        // Last: whatever was changed above changed the stamp it is bound to.
        var token = await users.GenerateUserTokenAsync(user, OwnerTokenProvider.Provider, UserManager<AppUser>.ResetPasswordTokenPurpose);
        var path = $"/set-password?for={user.Id}&token={WebEncoders.Base64UrlEncode(Encoding.UTF8.GetBytes(token))}";
        var asksMore = user.TwoFactorEnabled;
        return new Outcome(owner.PersonName, owner.Name, path, asksMore, user.Email);
    }

    private Found Choose(List<Found> owners, string? name)
    {
        var names = string.Join(", ", owners.Select(o => o.Name));
        if (owners.Count == 0)
            throw new Refusal("No owner of this practice has a sign-in.");
        if (name is null)
            return owners is [var only] ? only : throw new Refusal("There are several owners. Say which with --name: {0}.", names);
        return owners.Find(o => users.NormalizeName(o.Name) == users.NormalizeName(name.Trim()))
            ?? throw new Refusal("No owner signs in as {0}. Owners sign in as: {1}.", name, names);
    }

    private static string Letter(bool dropFactors) =>
        dropFactors
            ? "At the command line of the machine, a link was made that sets a new password for your sign-in. Your codes app and passkeys were taken off, and your sign-ins were ended."
            : "At the command line of the machine, a link was made that sets a new password for your sign-in. Your sign-ins were ended.";

    private sealed record Found(Guid UserId, Guid PersonId, string PersonName, string Name);

    /// <param name="Name">What they sign in with.</param>
    /// <param name="Path">Path and query of the link: good for one hour and one use.</param>
    /// <param name="AsksForCode">Their codes app stays and is asked for after the new password.</param>
    /// <param name="Email">Where a letter tells of it; null where nobody is told.</param>
    public sealed record Outcome(string PersonName, string Name, string Path, bool AsksForCode, string? Email);
}
