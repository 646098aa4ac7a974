namespace HairClinic.Web.Data.Books;

/// <summary>The serials of units.</summary>
public static class UnitSerials
{
    private const string StockLetter = "S";

    /// <summary>The client's code and the next number that is free: somebody may have numbered by hand.</summary>
    /// <param name="client">Null for the stock.</param>
    public static async Task<string> ProposeAsync(ClinicDb db, Client? client, CancellationToken cancellation)
    {
        Guid? clientId = client?.Id;
        var units = await db.HairSystems.CountAsync(u => u.ClientId == clientId, cancellation);
        for (var number = units + 1; ; number++)
        {
            var serial = string.Create(CultureInfo.InvariantCulture, $"{client?.Code ?? StockLetter}-{number}");
            if (!await db.HairSystems.AnyAsync(u => u.Serial == serial, cancellation))
                return serial;
        }
    }
}
