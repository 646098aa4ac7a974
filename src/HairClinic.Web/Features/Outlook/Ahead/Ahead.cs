using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How the promise was kept and who endangers it, and what the weeks ahead ask of salons and workshops.</summary>
public sealed class Ahead(ClinicDbFactory databases, CurrentActor current, AccessLogStore log, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        // Held open, the connection is told once who is acting.
        await db.Database.OpenConnectionAsync(cancellation);
        var salons = await SalonsAsync(db, cancellation);
        var today = salons.Select(s => s.DayOf(clock.GetCurrentInstant())).DefaultIfEmpty().Min();
        return new Screen(
            today,
            salons.Count == await db.Salons.CountAsync(cancellation),
            await PromiseAsync(db, salons, cancellation),
            await GapRisks.ReadAsync(db, today, cancellation),
            await LoadWeeks.ReadAsync(db, cancellation),
            await WorkshopMonths.ReadAsync(db, cancellation)
        );
    }

    public async Task<IReadOnlyList<SalonWeeks>> LoadAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await LoadWeeks.ReadAsync(db, cancellation);
    }

    public async Task<IReadOnlyList<WorkshopMonths>> OrdersAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await WorkshopMonths.ReadAsync(db, cancellation);
    }

    /// <summary>All of them, to be taken out: that they were is a line of the access log.</summary>
    public async Task<IReadOnlyList<GapRow>> GapsAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var promise = await PromiseAsync(db, await SalonsAsync(db, cancellation), cancellation);
        var reason = $"days without hair: {promise.Gaps.Count}";
        await log.NoteAsync(db, AccessDeed.ExportedPractice, clientId: null, reason: reason, cancellation: cancellation);
        return promise.Gaps;
    }

    // Of another salon only those clients could be seen who were let in: their share would tell nothing of it.
    private Task<List<Salon>> SalonsAsync(ClinicDb db, CancellationToken cancellation) =>
        db.Salons.AsNoTracking().Where(s => current.Person.Salons.Contains(s.Id)).OrderBy(s => s.Name).ToListAsync(cancellation);

    private async Task<PromiseKept> PromiseAsync(ClinicDb db, List<Salon> salons, CancellationToken cancellation) =>
        PromiseKept.Measure(
            await HairHistories.ReadAsync(db, [.. salons.Select(s => s.Id)], cancellation),
            salons,
            clock.GetCurrentInstant()
        );

    /// <param name="AllSalons">Whether the person sees the clients of every salon of the practice.</param>
    public sealed record Screen(
        LocalDate Today,
        bool AllSalons,
        PromiseKept Promise,
        GapRisks GapRisks,
        IReadOnlyList<SalonWeeks> Load,
        IReadOnlyList<WorkshopMonths> Orders
    );
}
