using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Binder;

/// <summary>
/// Several sheets at once, as the command and the demo bring them. They are rehearsed one upon the other in a
/// transaction that is rolled back; only if all of them are clean is each brought for good.
/// </summary>
public sealed class ImportBinder(ClinicDbFactory databases, Import import, IClock clock)
{
    /// <returns>One report a sheet, up to the first that fails: those after it refer to it and were not looked at.</returns>
    public async Task<IReadOnlyList<ImportReport>> RehearseAsync(IReadOnlyList<SheetDraft> drafts, CancellationToken cancellation)
    {
        var reports = new List<ImportReport>();
        await using var db = databases.Open();
        await using var rehearsal = await db.Database.BeginTransactionAsync(cancellation);
        foreach (var draft in drafts)
        {
            var report = await SheetImport.For(db, draft.Order!, clock.GetCurrentInstant()).RunAsync(cancellation);
            reports.Add(report);
            if (report.Problems.Count > 0)
                break;
            await db.SaveChangesAsync(cancellation);
            db.ChangeTracker.Clear();
        }
        await rehearsal.RollbackAsync(cancellation);
        return reports;
    }

    /// <exception cref="Refusal">A sheet no longer fits; it and those after it were not written.</exception>
    public async Task<IReadOnlyList<Import.Outcome>> SaveAsync(
        IReadOnlyList<SheetDraft> drafts,
        bool createMissing,
        CancellationToken cancellation
    )
    {
        var outcomes = new List<Import.Outcome>();
        foreach (var draft in drafts)
            outcomes.Add(await import.SaveAsync(Guid.CreateVersion7(), draft, createMissing, cancellation));
        return outcomes;
    }
}
