using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell.Limits;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace HairClinic.Web.Shell.SignIn;

/// <summary>A cookie counts as long as its sign-in does, and as long as the account has not been changed under it.</summary>
public static class SessionCookieValidator
{
    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var user = services.GetRequiredService<UserManager<AppUser>>().GetUserId(context.Principal!);
        if (
            ActorClaims.SessionOf(context.Principal) is { } session
            && Guid.TryParse(user, out var userId)
            && await services
                .GetRequiredService<SessionStore>()
                .CheckAndTouchAsync(
                    session,
                    userId,
                    context.HttpContext.RequestAborted,
                    atTablet: ActorClaims.LockAfterOf(context.Principal) is not null,
                    // An open screen that connects anew is nobody's touch.
                    isUse: !SameOriginOnly.IsBlazorRequest(context.HttpContext)
                )
        )
        {
            await SecurityStampValidator.ValidatePrincipalAsync(context);
            return;
        }
        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(context.Scheme.Name);
    }

    /// <summary>What is read afresh each minute is the person; the sign-in stays the same one.</summary>
    public static Task CopySessionClaimsAsync(SecurityStampRefreshingPrincipalContext context)
    {
        context.NewPrincipal?.Identities.First().AddClaims(ActorClaims.SessionClaimsOf(context.CurrentPrincipal));
        return Task.CompletedTask;
    }
}
