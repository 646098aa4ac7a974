using System.Security.Claims;
using HairClinic.Web.Practices;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace HairClinic.Web.Data.Accounts;

/// <summary>The cookie of a client: it names a sign-in, and the sign-in is asked each time.</summary>
public static class ClientCookie
{
    public static Task SignInAsync(HttpContext http, (ClientActor Actor, bool Household) opened) =>
        http.SignInAsync(
            AccountsSetup.ClientScheme,
            Principal(opened.Actor, opened.Household),
            new AuthenticationProperties { IsPersistent = true }
        );

    public static ClaimsPrincipal Principal(ClientActor actor, bool household) =>
        new(
            new ClaimsIdentity(
                ActorClaims.For(actor).Concat(household ? [new Claim(ActorClaims.Household, "1")] : Array.Empty<Claim>()),
                AccountsSetup.ClientScheme
            )
        );

    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        if (ActorClaims.ToActor(context.Principal) is not ClientActor { SignInId: not null } actor)
        {
            context.RejectPrincipal();
            return;
        }
        if (context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<AsksSignInAttribute>() is not null)
            return;
        var signIns = context.HttpContext.RequestServices.GetRequiredService<ClientSignIns>();
        if (await signIns.CheckAsync(actor, context.HttpContext.RequestAborted) is not var (now, household))
        {
            context.RejectPrincipal();
            return;
        }
        if (now != actor || household != context.Principal!.HasClaim(ActorClaims.Household, "1"))
        {
            context.ReplacePrincipal(Principal(now, household));
            context.ShouldRenew = true;
        }
    }
}
