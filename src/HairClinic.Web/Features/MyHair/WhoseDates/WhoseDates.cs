using HairClinic.Web.Accounts;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Somebody who looks after others turns to the page of one of them. No id leaves the house: each is named by a key that means nothing elsewhere.</summary>
public sealed class WhoseDates(ClientSessionStore signIns, CurrentActor current)
{
    public async Task<IReadOnlyList<Choice>> OpenAsync(CancellationToken cancellation)
    {
        var own = current.Client;
        var pages = await signIns.PagesAsync(own, cancellation);
        return [.. pages.Select(p => new Choice(KeyOf(own, p.ClientId), p.Name, p.ClientId == own.ClientId))];
    }

    /// <returns>The sign-in as it is now; null when the key names nobody they look after.</returns>
    public async Task<ActiveClientSignIn?> SaveAsync(string? key, CancellationToken cancellation)
    {
        var own = current.Client;
        var pages = await signIns.PagesAsync(own, cancellation);
        return pages.FirstOrDefault(p => KeyOf(own, p.ClientId) == key) is { } page
            ? await signIns.SwitchClientAsync(own, page.ClientId, cancellation)
            : null;
    }

    // Bound to the sign-in, so that a key is of no use to anybody else.
    private static string KeyOf(ClientActor own, Guid client) =>
        Convert.ToHexStringLower(SHA256.HashData([.. own.SignInId!.Value.ToByteArray(), .. client.ToByteArray()]))[..16];

    public sealed record Choice(string Key, string Name, bool Shown);
}
