using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Workers;

/// <summary>Recalculates the due dates of open bonds after something they depend on changed.</summary>
public sealed class DueDateRefresher
{
    private const int BatchSize = 500;

    /// <returns>How many bonds were looked at and how many fall due differently now.</returns>
    public async Task<(int Seen, int Moved)> RunAsync(ClinicDb db, RefreshDueDatesBody body, CancellationToken cancellation)
    {
        var book = await DueFacts.LoadAsync(db, cancellation);
        var adhesives = await db
            .Products.AsNoTracking()
            .Where(p => p.Kind == ProductKind.Adhesive || p.Kind == ProductKind.Tape)
            .ToDictionaryAsync(p => p.Id, p => p.LabelCureHours, cancellation);
        var (seen, moved, after) = (0, 0, Guid.Empty);
        while (true)
        {
            var batch = await (
                from bond in db.Bonds.Include(b => b.Products)
                join unit in db.HairSystems on bond.HairSystemId equals unit.Id
                join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
                where bond.RemovedOn == null && bond.Id > after && (body.ClientId == null || bond.ClientId == body.ClientId)
                orderby bond.Id
                select new { Bond = bond, kind.BaseMaterialId }
            )
                .Take(BatchSize)
                .ToListAsync(cancellation);
            if (batch.Count == 0)
                return (seen, moved);
            var clientIds = batch.Select(b => b.Bond.ClientId).ToList();
            var clients = await db
                .Clients.AsNoTracking()
                .Include(c => c.Events)
                .Where(c => clientIds.Contains(c.Id))
                .ToDictionaryAsync(c => c.Id, cancellation);
            var holds = await HoldFacts.LoadAsync(db, book.Windows, clientIds, cancellation, book.HoldCohorts);
            foreach (var row in batch)
            {
                var used = row.Bond.Products.Select(p => p.ProductId).FirstOrDefault(adhesives.ContainsKey);
                var adhesive = used == Guid.Empty ? (Guid?)null : used;
                var label = adhesive is { } id ? adhesives[id] : null;
                if (
                    TryBasis(() =>
                        book.CalculatorFor(
                            clients[row.Bond.ClientId],
                            row.BaseMaterialId,
                            adhesive,
                            row.Bond.Attachment,
                            label,
                            row.Bond.WaitsKept,
                            holds,
                            row.Bond.Products.FirstOrDefault(p => p.ProductId == adhesive)?.LotId
                        )
                    ) is
                    { } basis
                )
                    moved += Renew(row.Bond, basis) ? 1 : 0;
            }
            seen += batch.Count;
            after = batch[^1].Bond.Id;
            await db.SaveChangesAsync(cancellation);
            db.ChangeTracker.Clear();
        }
    }

    // No window fits since a row was taken away: this bond keeps its dates until one does, and the others get theirs.
    private static DueCalculator? TryBasis(Func<DueCalculator> ask)
    {
        try
        {
            return ask();
        }
        catch (Refusal)
        {
            return null;
        }
    }

    private static bool Renew(Bond bond, DueCalculator basis)
    {
        var before = (bond.OpensOn, bond.DueOn, bond.ClosesOn);
        bond.SetDueWindow(basis.WindowFor(bond.AppliedOn));
        return before != (bond.OpensOn, bond.DueOn, bond.ClosesOn);
    }
}
