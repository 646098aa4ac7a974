using System.Security.Claims;
using HairClinic.Web.Accounts;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace HairClinic.Web.Shell.SignIn;

/// <summary>The cookie of a client: it names a sign-in, and the sign-in is asked each time.</summary>
public static class ClientCookie
{
    public static Task SignInAsync(HttpContext http, ActiveClientSignIn opened) =>
        http.SignInAsync(AccountsSetup.ClientScheme, Principal(opened), new AuthenticationProperties { IsPersistent = true });

    public static ClaimsPrincipal Principal(ActiveClientSignIn signIn)
    {
        var claims = ActorClaims.For(signIn.Actor).ToList();
        if (signIn.Household)
            claims.Add(new(ActorClaims.Household, "1"));
        if (!signIn.OpensAll)
            claims.Add(new(ActorClaims.DatesOnly, "1"));
        return new(new ClaimsIdentity(claims, AccountsSetup.ClientScheme));
    }

    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        if (ActorClaims.ToActor(context.Principal) is not ClientActor { SignInId: not null } actor)
        {
            context.RejectPrincipal();
            return;
        }
        if (context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<ChecksSignInAttribute>() is not null)
            return;
        var signIns = context.HttpContext.RequestServices.GetRequiredService<ClientSessionStore>();
        if (await signIns.CheckAsync(actor, context.HttpContext.RequestAborted) is not { } now)
        {
            context.RejectPrincipal();
            return;
        }
        if (
            now.Actor != actor
            || now.Household != context.Principal!.HasClaim(ActorClaims.Household, "1")
            || now.OpensAll == context.Principal.HasClaim(ActorClaims.DatesOnly, "1")
        )
        {
            context.ReplacePrincipal(Principal(now));
            context.ShouldRenew = true;
        }
    }
}
