using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Whoever is at work at a shared tablet leaves it: from now on their screens there read nothing, until their PIN.</summary>
public sealed class LockTablet(TabletStore tablets, SessionStore sessions)
{
    public async Task SaveAsync(CancellationToken cancellation)
    {
        if (await tablets.FindCurrentAsync(cancellation) is { } tablet)
            await sessions.LockTabletAsync(tablet.Id, cancellation);
    }
}
