using HairClinic.Web.Accounts;
using HairClinic.Web.Data;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Uses up a sign-in link. Looking at it does nothing: mail scanners open links too.</summary>
public sealed class OpenLink(ClinicDbFactory databases, SignInLinkStore links, ClientSessionStore signIns)
{
    /// <returns>The sign-in it gives; null when the link is used, too old or made up, or its address opens nothing any more.</returns>
    public async Task<Opened?> SaveAsync(string token, CancellationToken cancellation)
    {
        await using var unfenced = databases.OpenWithoutActor();
        if (await links.UseUpAsync(unfenced, token, cancellation) is not { } link)
            return null;
        return await signIns.OpenAsync(link.PracticeId, link.ClientId, link.Email, link.Invitation, cancellation) is { } signIn
            ? new Opened(signIn, await signIns.LanguageAsync(signIn.Actor, cancellation))
            : null;
    }

    /// <param name="Language">As chosen on an earlier visit; null where none was.</param>
    public sealed record Opened(ActiveClientSignIn SignIn, string? Language);
}
