using System.Data;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>The book as sheets again: exactly, to bring back; or made safe to open in a spreadsheet.</summary>
public sealed class Export(ClinicDbFactory databases, AccessLogStore log)
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

    /// <summary>Writes sheets row by row, all of one moment, whatever is saved meanwhile and however long they are.</summary>
    /// <param name="into">Opens the place of a sheet, has it written there, and closes it.</param>
    public async Task WriteSheetsAsync(
        IReadOnlyList<SheetKind> kinds,
        bool forPeople,
        Func<SheetKind, Func<Stream, Task>, Task> into,
        CancellationToken cancellation
    )
    {
        await using var db = databases.Open();
        var counts = await OpenAsync(cancellation);
        foreach (var kind in kinds)
            await log.NoteAsync(
                db,
                AccessAction.ExportedPractice,
                clientId: null,
                reason: $"{kind.Name}: {counts.CountOf(kind)}",
                cancellation: cancellation
            );
        // The moment is that of the first row read in it.
        await using var moment = await db.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellation);
        var rows = new ExportRows(db);
        foreach (var kind in kinds)
            await into(
                kind,
                stream => SheetWriter.WriteAsync(stream, kind.Headers, rows.Read(kind, cancellation), forPeople, cancellation)
            );
    }

    public sealed record Screen(int Clients, int Units, int Bonds, int Visits)
    {
        public int CountOf(SheetKind kind) =>
            kind.Name switch
            {
                "clients" => Clients,
                "units" => Units,
                "bonds" => Bonds,
                _ => Visits,
            };
    }
}
