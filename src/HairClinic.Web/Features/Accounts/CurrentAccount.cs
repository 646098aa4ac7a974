using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Accounts;

/// <summary>The account of whoever is acting, and what follows when something about it was changed.</summary>
public sealed class CurrentAccount(StaffSignInManager accounts, SessionStore sessions, AccountNotices notices, CurrentActor current)
{
    public Guid? Session => current.Person.SessionId;

    public Task<AppUser> ReadAsync(CancellationToken cancellation) =>
        accounts.UserManager.Users.SingleAsync(
            u => u.PracticeId == current.Person.PracticeId && u.PersonId == current.Person.PersonId,
            cancellation
        );

    /// <summary>What was open elsewhere ends, the screen they are at goes on, and a letter tells them.</summary>
    /// <param name="what">One sentence for the letter.</param>
    public async Task EndOtherSessionsAndNotifyAsync(AppUser user, string what, CancellationToken cancellation)
    {
        await sessions.EndAllAsync(user.Id, Session, SessionEnd.SignInChanged, cancellation);
        await accounts.RefreshSignInAsync(user);
        await notices.NotifyAsync(user, what, cancellation);
    }
}
