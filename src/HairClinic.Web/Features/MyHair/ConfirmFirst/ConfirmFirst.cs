using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.MyHair.ConfirmFirst;

/// <summary>Why an address opens dates only, and whom to ring about it.</summary>
public sealed class ConfirmFirst(ClinicDbFactory databases, CurrentActor current)
{
    /// <returns>Null when the client is no longer there.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        var confirmed = await db.OpensAllAsync(cancellation);
        return await (
            from c in db.Clients
            where c.Id == client
            join salon in db.Salons on c.HomeSalonId equals salon.Id
            select new Screen(salon.Name, salon.Phone, confirmed)
        ).SingleOrDefaultAsync(cancellation);
    }

    /// <param name="Confirmed">It was confirmed meanwhile.</param>
    public sealed record Screen(string Salon, string? Phone, bool Confirmed);
}
