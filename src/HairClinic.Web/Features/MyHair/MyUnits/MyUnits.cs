using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;
using HairClinic.Web.Ui.Wear;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.MyHair.MyUnits;

/// <summary>A client sees their own units over time: the same wear line the staff read.</summary>
public sealed class MyUnits(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <returns>Null when the client is no longer there.</returns>
    public async Task<WearLineModel?> OpenAsync(CancellationToken cancellation)
    {
        var clientId = current.Client.ClientId;
        await using var db = databases.Open();
        var own = await db
            .Clients.AsNoTracking()
            .Where(c => c.Id == clientId)
            .Select(c => new { Id = c.MergedIntoId ?? c.Id, Salon = db.Salons.First(s => s.Id == c.HomeSalonId) })
            .SingleOrDefaultAsync(cancellation);
        if (own is null)
            return null;
        return await WearLineBook.LoadAsync(db, own.Id, own.Salon.DayOf(clock.GetCurrentInstant()), cancellation);
    }
}
