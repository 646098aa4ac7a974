using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>Units of nobody's that a client could be given, or lent for a time.</summary>
public sealed class ChooseFromStock(ClinicDbFactory databases, CurrentActor current)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        var own = current.Person.Salons;
        var stock = await (
            from unit in db.HairSystems.AsNoTracking()
            where unit.ClientId == null && unit.PlaceSalonId != null && own.Contains(unit.PlaceSalonId.Value)
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join salon in db.Salons on unit.PlaceSalonId equals salon.Id
            orderby salon.Name, unit.Serial
            select new
            {
                unit.Id,
                unit.Serial,
                unit.State,
                unit.Cleaning,
                unit.Spot,
                Kind = kind.Name,
                Salon = salon.Name,
            }
        ).ToListAsync(cancellation);
        return new Screen(
            client.Name,
            client.Code,
            [
                .. stock
                    .Where(u => u.State.IsBondable())
                    .Select(u => new StockRow(u.Id, u.Serial, u.Kind, u.Salon, u.Spot, u.Cleaning is null or UnitCleaning.Clean)),
            ]
        );
    }

    public sealed record Screen(string Name, string Code, IReadOnlyList<StockRow> Stock);

    /// <param name="Clean">It may go on a head today.</param>
    public sealed record StockRow(Guid Id, string Serial, string Kind, string Salon, string? Spot, bool Clean);
}
