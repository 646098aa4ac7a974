using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Visits;

public sealed partial class LogRebond
{
    private async Task<RebondSheet> ReadAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        var products = input.Products.Select(p => p.ProductId).ToList();
        // Lots, events and the record come along so that the context ties them to their owners.
        var found = await db
            .Visits.Where(v => v.Id == input.VisitId && salons.Contains(v.SalonId))
            .Select(v => new
            {
                Visit = v,
                v.Record,
                Client = db.Clients.First(c => c.Id == v.ClientId),
                Events = db.LifeEvents.Where(e => e.ClientId == v.ClientId).ToList(),
                Worn = db.Bonds.FirstOrDefault(b => b.ClientId == v.ClientId && b.RemovedOn == null),
                WasFitted = db.Bonds.Any(b => b.ClientId == v.ClientId),
                Units = db.HairSystems.Where(u => u.ClientId == v.ClientId).ToList(),
                BaseMaterialId = (
                    from unit in db.HairSystems
                    join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
                    where unit.Id == input.UnitId
                    select kind.BaseMaterialId
                ).FirstOrDefault(),
                Products = db.Products.Where(p => products.Contains(p.Id)).ToList(),
                Lots = db.ProductLots.Where(l => products.Contains(l.ProductId)).ToList(),
                Clearances = db.Clearances.Where(c => c.ClientId == v.ClientId && c.Kind == ClearanceKind.Block).ToList(),
            })
            .SingleOrDefaultAsync(cancellation);
        if (found is null)
            throw new Refusal("This visit is not in the book of your salons.");
        return new RebondSheet(found.Visit, found.Client, found.Worn, found.WasFitted, found.Units, found.BaseMaterialId, found.Products)
        {
            Blocks = found.Clearances,
        };
    }
}
