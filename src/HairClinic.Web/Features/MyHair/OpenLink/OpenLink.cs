using System.Security.Claims;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Features.MyHair.OpenLink;

/// <summary>Uses up a sign-in link. Looking at it does nothing: mail scanners open links too.</summary>
public sealed class OpenLink(ClinicDbFactory databases, SignInLinkBook links)
{
    /// <returns>The sign-in it gives; null when the link is used, too old or made up.</returns>
    public async Task<ClaimsPrincipal?> SaveAsync(string token, CancellationToken cancellation)
    {
        await using var unfenced = databases.OpenUnfenced();
        if (await links.UseUpAsync(unfenced, token, cancellation) is not var (practice, client))
            return null;
        var claims = ActorClaims.For(new ClientActor(practice, client));
        return new ClaimsPrincipal(new ClaimsIdentity(claims, AccountsSetup.ClientScheme));
    }
}
