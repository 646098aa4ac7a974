using System.Security.Claims;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.Authentication;

namespace HairClinic.Web.Accounts;

/// <summary>Signs people in and out: each sign-in is a row that can be seen and ended, and only who works here is let in.</summary>
public sealed class StaffSignInManager(
    UserManager<AppUser> users,
    IHttpContextAccessor http,
    IUserClaimsPrincipalFactory<AppUser> claims,
    IOptions<IdentityOptions> options,
    ILogger<SignInManager<AppUser>> log,
    IAuthenticationSchemeProvider schemes,
    IUserConfirmation<AppUser> confirmation,
    SessionStore sessions,
    TabletStore tablets
) : SignInManager<AppUser>(users, http, claims, options, log, schemes, confirmation)
{
    private SignInWay _way = SignInWay.Password;

    /// <summary>Lets in someone who has proved who they are.</summary>
    public Task EnterAsync(AppUser user, SignInWay how)
    {
        _way = how;
        return SignInWithClaimsAsync(user, new AuthenticationProperties(), []);
    }

    /// <summary>The password was right: they are signed in, unless a code of their app is needed.</summary>
    public async Task<SignInResult> EnterAfterPasswordAsync(AppUser user)
    {
        _way = SignInWay.Password;
        return await SignInOrTwoFactorAsync(user, isPersistent: false);
    }

    /// <returns>Whose passkey it is; null when it opens nothing here.</returns>
    public async Task<AppUser?> VerifyPasskeyAsync(string credential)
    {
        try
        {
            var proof = await PerformPasskeyAssertionAsync(credential);
            if (!proof.Succeeded)
                return null;
            // Its counter has moved on: a copy of the key would show by an older one.
            return (await UserManager.AddOrUpdatePasskeyAsync(proof.User, proof.Passkey)).Succeeded ? proof.User : null;
        }
        // No challenge, an expired one, or a malformed answer.
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or PasskeyException)
        {
            return null;
        }
    }

    /// <summary>Someone who left keeps an account that opens nothing.</summary>
    public override async Task<bool> CanSignInAsync(AppUser user) =>
        await base.CanSignInAsync(user) && ActorClaims.ToActor(await CreateUserPrincipalAsync(user)) is PersonActor;

    public override async Task SignInWithClaimsAsync(
        AppUser user,
        AuthenticationProperties? authenticationProperties,
        IEnumerable<Claim> additionalClaims
    )
    {
        var cancellation = Context.RequestAborted;
        var tablet = await tablets.FindCurrentAsync(cancellation) is { } here && here.PracticeId == user.PracticeId ? here : null;
        // A device holds one sign-in: what was open here before does not linger. At a shared tablet it waits, locked, for its person.
        if (tablet is null || ActorClaims.LockAfterOf(Context.User) is null)
            await EndThisAsync();
        var agent = Context.Request.Headers.UserAgent.ToString();
        var claims = additionalClaims.Append(
            ActorClaims.MakeSessionClaim(await sessions.BeginAsync(user, _way, agent, cancellation, tablet))
        );
        if (tablet is not null)
        {
            claims = claims.Append(ActorClaims.ForLockAfter(tablet.LockAfterMinutes));
            await tablets.RecordSignInAsync(tablet, user, _way, cancellation);
        }
        await base.SignInWithClaimsAsync(user, authenticationProperties, [.. claims]);
    }

    /// <summary>Reads afresh who they are; the sign-in stays the same one.</summary>
    public override async Task RefreshSignInAsync(AppUser user)
    {
        if (ActorClaims.SessionOf(Context.User) is not null && UserManager.GetUserId(Context.User) == user.Id.ToString())
            await base.SignInWithClaimsAsync(user, new AuthenticationProperties(), [.. ActorClaims.SessionClaimsOf(Context.User)]);
    }

    public override async Task SignOutAsync()
    {
        await EndThisAsync();
        await base.SignOutAsync();
    }

    private async Task EndThisAsync()
    {
        if (ActorClaims.SessionOf(Context.User) is { } session && Guid.TryParse(UserManager.GetUserId(Context.User), out var userId))
            await sessions.EndAsync(userId, session, SessionEnd.SignedOut, Context.RequestAborted);
    }
}
