using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Authentication;

namespace HairClinic.Web.Features.Accounts;

/// <summary>
/// Reads afresh who is signed in and where they work, and goes on: after a salon was opened, the sign-in must know it. Whose sign-in has
/// ended signs in anew: the cookie alone would be believed for another minute.
/// </summary>
public static class RefreshSignInEndpoint
{
    public static void MapRefreshSignIn(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/refresh-sign-in",
                async (string? returnTo, HttpContext context, SignInManager<AppUser> accounts, SessionStore sessions, IClock clock) =>
                {
                    var back = LocalPath.OrStart(returnTo);
                    if (
                        ActorClaims.SessionOf(context.User) is { } session
                        && await accounts.UserManager.GetUserAsync(context.User) is { } user
                        && await sessions.TouchIfActiveAsync(session, user.Id, clock.GetCurrentInstant(), context.RequestAborted)
                    )
                    {
                        await accounts.RefreshSignInAsync(user);
                        return Results.LocalRedirect(back);
                    }
                    await context.SignOutAsync(IdentityConstants.ApplicationScheme);
                    return Results.Challenge(new() { RedirectUri = back }, [IdentityConstants.ApplicationScheme]);
                }
            )
            .RequireAuthorization(Policies.Staff);
}
