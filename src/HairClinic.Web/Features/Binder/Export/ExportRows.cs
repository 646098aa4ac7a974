using System.Runtime.CompilerServices;
using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>The rows of each sheet in their order, some at a time: however long the book, what is held of it is the ids and one piece.</summary>
/// <param name="db">In a transaction that sees one moment, for the rows are asked for after their ids.</param>
internal sealed class ExportRows(ClinicDb db)
{
    private const int Piece = 1000;

    // The order of bytes, the same on every server.
    private const string Bytes = "C";

    public IAsyncEnumerable<IReadOnlyList<string>> Read(SheetKind kind, CancellationToken cancellation) =>
        kind.Name switch
        {
            "clients" => ClientsAsync(cancellation),
            "units" => UnitsAsync(cancellation),
            "bonds" => BondsAsync(cancellation),
            _ => VisitsAsync(cancellation),
        };

    private async IAsyncEnumerable<IReadOnlyList<string>> ClientsAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Name, cancellation);
        // A merged record lives on in the one it was folded into.
        var ids = await db
            .Clients.Where(c => c.MergedIntoId == null)
            .OrderBy(c => EF.Functions.Collate(c.Code, Bytes))
            .Select(c => c.Id)
            .ToListAsync(cancellation);
        foreach (var piece in ids.Chunk(Piece))
        {
            var clients = await db
                .Clients.AsNoTracking()
                .Include(c => c.CareFacts)
                .AsSplitQuery()
                .Where(c => piece.Contains(c.Id))
                .ToDictionaryAsync(c => c.Id, cancellation);
            foreach (var id in piece)
                yield return ClientRow.FromClient(clients[id], salons[clients[id].HomeSalonId]).Cells();
        }
    }

    private async IAsyncEnumerable<IReadOnlyList<string>> UnitsAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Name, cancellation);
        var clients = await ClientCodeIndex.LoadAsync(db, cancellation);
        var kinds = await UnitKindIndex.LoadAsync(db, cancellation);
        var ids = await db
            .HairSystems.OrderBy(u => EF.Functions.Collate(u.Serial, Bytes))
            .ThenBy(u => u.Id)
            .Select(u => u.Id)
            .ToListAsync(cancellation);
        foreach (var piece in ids.Chunk(Piece))
        {
            var units = await db
                .HairSystems.AsNoTracking()
                .Include(u => u.Promises)
                .AsSplitQuery()
                .Where(u => piece.Contains(u.Id))
                .ToDictionaryAsync(u => u.Id, cancellation);
            foreach (var unit in piece.Select(id => units[id]))
                yield return kinds.RowOfUnit(unit, clients.CodeOf(unit.ClientId), unit.PlaceSalonId is { } at ? salons[at] : null).Cells();
        }
    }

    private async IAsyncEnumerable<IReadOnlyList<string>> BondsAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var homes = await db.Clients.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.HomeSalonId, cancellation);
        var clients = await ClientCodeIndex.LoadAsync(db, cancellation);
        var products = await ProductIndex.LoadAsync(db, cancellation);
        var stylists = await StylistIndex.LoadAsync(db, cancellation);
        var ids = await (
            from bond in db.Bonds
            join unit in db.HairSystems on bond.HairSystemId equals unit.Id
            orderby EF.Functions.Collate(unit.Serial, Bytes), bond.AppliedOn, bond.AppliedAt != null, bond.AppliedAt, bond.Id
            select bond.Id
        ).ToListAsync(cancellation);
        // Of two on one unit at one moment the first is meant; they stand beside each other.
        var (day, told) = (("", ""), new HashSet<string>());
        foreach (var piece in ids.Chunk(Piece))
        {
            var bonds = await db
                .Bonds.AsNoTracking()
                .Include(b => b.Products)
                .AsSplitQuery()
                .Where(b => piece.Contains(b.Id))
                .ToDictionaryAsync(b => b.Id, cancellation);
            var units = bonds.Values.Select(b => b.HairSystemId).Distinct().ToList();
            var serials = await db.HairSystems.Where(u => units.Contains(u.Id)).ToDictionaryAsync(u => u.Id, u => u.Serial, cancellation);
            foreach (var bond in piece.Select(id => bonds[id]))
            {
                var head = clients.ResolveMerged(bond.ClientId);
                var at = bond.AppliedAt?.InZone(salons[homes[head]].TimeZone).TimeOfDay;
                var cells = BondRow
                    .FromBond(
                        bond,
                        serials[bond.HairSystemId],
                        clients.CodeOf(head),
                        at,
                        UsedAdhesive.From(bond, products.All),
                        stylists.NameOf(bond.AppliedBy)
                    )
                    .Cells();
                if (day != (cells[0], cells[2]))
                    (day, told) = ((cells[0], cells[2]), []);
                if (told.Add(cells[3]))
                    yield return cells;
            }
        }
    }

    private async IAsyncEnumerable<IReadOnlyList<string>> VisitsAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var chairs = await db.Chairs.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.Name, cancellation);
        var clients = await ClientCodeIndex.LoadAsync(db, cancellation);
        var services = await ServiceIndex.LoadAsync(db, cancellation);
        var stylists = await StylistIndex.LoadAsync(db, cancellation);
        await foreach (var piece in DaysAsync(cancellation))
        {
            var visits = await db.Visits.AsNoTracking().Where(v => piece.Contains(v.Id)).OrderBy(v => v.Id).ToListAsync(cancellation);
            var rows = visits
                // A row is recognised by client and moment: of two at the same, the one that was not called off is meant.
                .OrderBy(v => v.State is VisitState.Cancelled or VisitState.DidNotCome)
                .Select(v =>
                    VisitRow.FromVisit(
                        v,
                        clients.CodeOf(v.ClientId)!,
                        salons[v.SalonId],
                        services.NameOf(v.ServiceKindId),
                        v.ChairId is { } chair ? chairs[chair] : null,
                        stylists.NameOf(v.PersonId)
                    )
                )
                .DistinctBy(r => r.BookKey)
                .OrderBy(r => r.Day)
                .ThenBy(r => r.Start)
                .ThenBy(r => r.ClientCode, StringComparer.Ordinal);
            foreach (var row in rows)
                yield return row.Cells();
        }
    }

    // Whole days: within one, rows are put in order by each salon's own clock.
    private async IAsyncEnumerable<List<Guid>> DaysAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        var (piece, day) = (new List<Guid>(), LocalDate.MinIsoValue);
        var all = await db.Visits.OrderBy(v => v.Day).Select(v => new ValueTuple<Guid, LocalDate>(v.Id, v.Day)).ToListAsync(cancellation);
        foreach (var (id, of) in all)
        {
            if (piece.Count >= Piece && of != day)
            {
                yield return piece;
                piece = [];
            }
            piece.Add(id);
            day = of;
        }
        if (piece.Count > 0)
            yield return piece;
    }
}
