using HairClinic.Web.Fence;

namespace HairClinic.Web.Data;

/// <summary>The time zone for whoever reads of the whole practice: that of the salon they are at, else of any.</summary>
public static class ReaderZone
{
    /// <returns>UTC before there is a salon.</returns>
    public static async Task<string> ReadAsync(ClinicDb db, PersonActor reader, CancellationToken cancellation) =>
        await db
            .Salons.OrderByDescending(s => s.Id == reader.AtSalon)
            .ThenBy(s => s.Name)
            .Select(s => s.Zone)
            .FirstOrDefaultAsync(cancellation)
        ?? "UTC";
}
