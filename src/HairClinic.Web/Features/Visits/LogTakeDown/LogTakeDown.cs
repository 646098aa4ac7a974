using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>Logs that a bond came off and no new one is made: for a reaction, an operation, a rest, or because it came off at home.</summary>
public sealed partial class LogTakeDown(ClinicDbFactory databases, WriteOnce writes, DraftStore drafts, CurrentActor current, IClock clock)
{
    /// <summary>Keeps what was typed so far.</summary>
    public Task KeepDraftAsync(Input input, CancellationToken cancellation) =>
        drafts.StoreAsync(nameof(LogTakeDown), input.VisitId, input, cancellation);

    /// <exception cref="Refusal">The domain says no, or another bond is on the head than when the form opened.</exception>
    /// <exception cref="OvertakenException">Someone changed this visit, bond or unit at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            var outcome = await writes.RunAsync(key, nameof(LogTakeDown), input, db => WriteAsync(db, input, cancellation), cancellation);
            await drafts.DeleteForSubjectAsync(nameof(LogTakeDown), input.VisitId, cancellation);
            return outcome;
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, VisitRecordMap.OnePerVisit))
        {
            throw new Refusal("This visit is logged already.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        var products = input.Products.Select(p => p.ProductId).ToList();
        var found =
            await db
                .Visits.Where(v => v.Id == input.VisitId && salons.Contains(v.SalonId))
                .Select(v => new
                {
                    Visit = v,
                    v.Record,
                    Salon = db.Salons.First(s => s.Id == v.SalonId),
                    Client = db.Clients.First(c => c.Id == v.ClientId),
                    Worn = db.Bonds.FirstOrDefault(b => b.ClientId == v.ClientId && b.RemovedOn == null),
                    Unit = (
                        from bond in db.Bonds
                        join unit in db.HairSystems on bond.HairSystemId equals unit.Id
                        where bond.ClientId == v.ClientId && bond.RemovedOn == null
                        select unit
                    ).FirstOrDefault(),
                    Loan = db
                        .UnitLoans.Where(l => l.ClientId == v.ClientId && l.BackOn == null)
                        .FirstOrDefault(l =>
                            db.Bonds.Any(b => b.HairSystemId == l.HairSystemId && b.ClientId == v.ClientId && b.RemovedOn == null)
                        ),
                    // Lots come along so that the context ties them to their products.
                    Products = db.Products.Where(p => products.Contains(p.Id)).ToList(),
                    Lots = db.ProductLots.Where(l => products.Contains(l.ProductId)).ToList(),
                })
                .SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This visit is not in the book of your salons.");
        if (found.Worn?.Id != input.WornBondId)
            throw new Refusal("Another bond is on this head than when you opened this form. Open the visit again to see it.");
        if (found is not { Worn: { } worn, Unit: { } unit })
            throw new Refusal("No bond is on this head, so none can come off.");
        var used = input.Products.Select(line =>
            (
                found.Products.FirstOrDefault(p => p.Id == line.ProductId) ?? throw new Refusal("Choose a product, or remove the line.")
            ).CreateTakeDownUse(line.LotId)
        );
        var now = clock.GetCurrentInstant();
        var hold = found.Visit.RecordTakeDown(
            Guid.CreateVersion7(),
            (worn, unit, input.ToTakeDown()),
            [.. used.Select(u => (Guid.CreateVersion7(), u))],
            input.NoBondUntil,
            found.Salon,
            now,
            current.Actor.Id,
            input.Note,
            found.Loan
        );
        return new Outcome(
            found.Client.Id,
            unit.Serial,
            worn.RemovedBecause!.Value,
            hold.Kind,
            hold.Lower,
            hold.Upper,
            worn.NoBondUntil,
            found.Salon.DayOf(now)
        );
    }
}
