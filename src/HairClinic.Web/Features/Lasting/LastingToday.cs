using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Lasting;

/// <summary>The day it is for who reads of the whole practice: that of the salon they are at.</summary>
internal static class LastingToday
{
    public static async Task<LocalDate> ReadAsync(ClinicDb db, CurrentActor reader, IClock clock, CancellationToken cancellation)
    {
        var at = reader.Person.AtSalon;
        var zone = await db
            .Salons.OrderByDescending(s => s.Id == at)
            .ThenBy(s => s.Name)
            .Select(s => s.Zone)
            .FirstOrDefaultAsync(cancellation);
        return clock.Today(zone ?? "UTC");
    }
}
