using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.AccessLog;
using HairClinic.Web.Features.Binder.Names;
using HairClinic.Web.Features.Binder.Rows;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Features.Binder.Sheets.Columns;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Binder.Export;

/// <summary>The book as sheets again: exactly, to bring back; or made safe to open in a spreadsheet.</summary>
public sealed class Export(ClinicDbFactory databases, AccessLogBook log)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .PracticeSettings.AsNoTracking()
            .Select(_ => new Screen(
                db.Clients.Count(c => c.MergedIntoId == null),
                db.HairSystems.Count(),
                db.Bonds.Count(),
                db.Visits.Count()
            ))
            .SingleAsync(cancellation);
    }

    /// <exception cref="Refusal">More rows than a sheet may have; nothing was read.</exception>
    public async Task<byte[]> WriteAsync(SheetKind kind, bool forPeople, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var count = kind.Name switch
        {
            "clients" => await db.Clients.CountAsync(c => c.MergedIntoId == null, cancellation),
            "units" => await db.HairSystems.CountAsync(cancellation),
            "bonds" => await db.Bonds.CountAsync(cancellation),
            _ => await db.Visits.CountAsync(cancellation),
        };
        if (count > SheetLimits.Default.Rows)
            throw new Refusal("This sheet has {0} rows; at most {1} go into one file.", count, SheetLimits.Default.Rows);
        await log.NoteAsync(db, AccessDeed.ExportedPractice, clientId: null, reason: $"{kind.Name}: {count}", cancellation: cancellation);
        var rows = kind.Name switch
        {
            "clients" => await ClientsAsync(db, cancellation),
            "units" => await UnitsAsync(db, cancellation),
            "bonds" => await BondsAsync(db, cancellation),
            _ => await VisitsAsync(db, cancellation),
        };
        return forPeople ? SheetWriter.WriteForPeople(kind.Headers, rows) : SheetWriter.WriteForRoundTrip(kind.Headers, rows);
    }

    private static async Task<IEnumerable<IReadOnlyList<string>>> ClientsAsync(ClinicDb db, CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Name, cancellation);
        // A merged record lives on in the one it was folded into.
        var clients = await db
            .Clients.AsNoTracking()
            .Include(c => c.CareFacts)
            .AsSplitQuery()
            .Where(c => c.MergedIntoId == null)
            .ToListAsync(cancellation);
        return clients.OrderBy(c => c.Code, StringComparer.Ordinal).Select(c => ClientRow.Of(c, salons[c.HomeSalonId]).Cells());
    }

    private static async Task<IEnumerable<IReadOnlyList<string>>> UnitsAsync(ClinicDb db, CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Name, cancellation);
        var clients = await ClientCodes.LoadAsync(db, cancellation);
        var kinds = await UnitKindBook.LoadAsync(db, cancellation);
        var units = await db.HairSystems.AsNoTracking().Include(u => u.Promises).AsSplitQuery().ToListAsync(cancellation);
        return units
            .OrderBy(u => u.Serial, StringComparer.Ordinal)
            .Select(u => kinds.RowOf(u, clients.CodeOf(u.ClientId), u.PlaceSalonId is { } at ? salons[at] : null).Cells());
    }

    private static async Task<IEnumerable<IReadOnlyList<string>>> BondsAsync(ClinicDb db, CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var homes = await db.Clients.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.HomeSalonId, cancellation);
        var clients = await ClientCodes.LoadAsync(db, cancellation);
        var serials = await db.HairSystems.AsNoTracking().ToDictionaryAsync(u => u.Id, u => u.Serial, cancellation);
        var products = await ProductBook.LoadAsync(db, cancellation);
        var stylists = await StylistBook.LoadAsync(db, cancellation);
        var bonds = await db.Bonds.AsNoTracking().Include(b => b.Products).AsSplitQuery().OrderBy(b => b.Id).ToListAsync(cancellation);
        return bonds
            .Select(b =>
            {
                var head = clients.Kept(b.ClientId);
                var at = b.AppliedAt?.InZone(salons[homes[head]].TimeZone).TimeOfDay;
                return BondRow.Of(
                    b,
                    serials[b.HairSystemId],
                    clients.CodeOf(head),
                    at,
                    UsedAdhesive.Of(b, products.All),
                    stylists.NameOf(b.AppliedBy)
                );
            })
            .OrderBy(r => r.Serial, StringComparer.Ordinal)
            .ThenBy(r => r.AppliedOn)
            .ThenBy(r => r.AppliedAt)
            .Select(r => r.Cells())
            .DistinctBy(cells => (cells[0], cells[2], cells[3]));
    }

    private static async Task<IEnumerable<IReadOnlyList<string>>> VisitsAsync(ClinicDb db, CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var chairs = await db.Chairs.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.Name, cancellation);
        var clients = await ClientCodes.LoadAsync(db, cancellation);
        var services = await ServiceBook.LoadAsync(db, cancellation);
        var stylists = await StylistBook.LoadAsync(db, cancellation);
        var visits = await db.Visits.AsNoTracking().OrderBy(v => v.Id).ToListAsync(cancellation);
        return visits
            // A row is recognised by client and moment: of two at the same, the one that was not called off is meant.
            .OrderBy(v => v.State is VisitState.Cancelled or VisitState.DidNotCome)
            .Select(v =>
                VisitRow.Of(
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
            .ThenBy(r => r.ClientCode, StringComparer.Ordinal)
            .Select(r => r.Cells());
    }

    public sealed record Screen(int Clients, int Units, int Bonds, int Visits);
}
