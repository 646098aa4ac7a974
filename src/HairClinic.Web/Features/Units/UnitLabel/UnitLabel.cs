using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Units;

/// <summary>A label to print: the serial as letters and as a code to scan, whose by code alone.</summary>
public sealed class UnitLabel(ClinicDbFactory databases)
{
    /// <returns>Null: no such unit, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await (
            from unit in db.HairSystems
            where unit.Id == unitId
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from client in owners.DefaultIfEmpty()
            select new Screen(unit.Serial, kind.Name, client == null ? null : client.Code)
        ).SingleOrDefaultAsync(cancellation);
    }

    /// <param name="ClientCode">Null for the stock. No label carries a name.</param>
    public sealed record Screen(string Serial, string Kind, string? ClientCode);
}
