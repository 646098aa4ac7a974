using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How the promise was kept and who endangers it, and what the weeks ahead ask of salons and workshops.</summary>
public sealed class Ahead(ClinicDbFactory databases, CurrentActor current, AccessLogStore log, IClock clock) : INightlyPage
{
    private const string Question = "ahead";

    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        // Held open, the connection is told once who is acting.
        await db.Database.OpenConnectionAsync(cancellation);
        var all = await db.Salons.AsNoTracking().OrderBy(s => s.Name).ToListAsync(cancellation);
        var salons = Own(all);
        var now = clock.GetCurrentInstant();
        var today = salons.Select(s => s.DayOf(now)).DefaultIfEmpty().Min();
        return new Screen(
            today,
            all.ToDictionary(s => s.Id, s => SalonToday.AsOf(s.Id, s.Name, s.Zone, now)),
            salons.Count == all.Count,
            await PromiseAsync(db, salons, cancellation),
            await GapRiskReport.ReadAsync(db, current.Person, today, cancellation),
            await WorkloadReader.ReadAsync(db, cancellation),
            await WorkshopOrderLoad.ReadAsync(db, cancellation)
        );
    }

    public async Task<IReadOnlyList<SalonLoadAndCapacity>> WorkloadAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await WorkloadReader.ReadAsync(db, cancellation);
    }

    public async Task<IReadOnlyList<WorkshopOrderLoad>> ExpectedOrdersAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await WorkshopOrderLoad.ReadAsync(db, cancellation);
    }

    /// <summary>All of them, to be taken out: that they were is a line of the access log.</summary>
    public async Task<IReadOnlyList<GapRow>> LoadGapsForExportAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var promise = await PromiseAsync(db, await SalonsAsync(db, cancellation), cancellation);
        var reason = $"days without hair: {promise.Gaps.Count}";
        await log.NoteAsync(db, AccessAction.ExportedPractice, clientId: null, reason: reason, cancellation: cancellation);
        return promise.Gaps;
    }

    // Of another salon only those clients could be seen who were let in: their share would tell nothing of it.
    private List<Salon> Own(IEnumerable<Salon> all) => [.. all.Where(s => current.Person.Salons.Contains(s.Id))];

    private async Task<List<Salon>> SalonsAsync(ClinicDb db, CancellationToken cancellation) =>
        Own(await db.Salons.AsNoTracking().OrderBy(s => s.Name).ToListAsync(cancellation));

    private async Task<GapReport> PromiseAsync(ClinicDb db, List<Salon> salons, CancellationToken cancellation)
    {
        var kept = await PageResultStore.GetOrComputeAsync(
            db,
            current.Person,
            Question,
            () => WorkOutAsync(db, salons, cancellation),
            cancellation
        );
        return await kept.WithNamesAsync(db, salons, cancellation);
    }

    public async Task PrecomputeAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var kept = await WorkOutAsync(db, await SalonsAsync(db, cancellation), cancellation);
        await PageResultStore.StoreAsync(db, current.Person, Question, kept, cancellation);
    }

    private async Task<GapReport> WorkOutAsync(ClinicDb db, List<Salon> salons, CancellationToken cancellation) =>
        GapReport.Measure(
            await HairHistoryReader.ReadForSalonsAsync(db, [.. salons.Select(s => s.Id)], cancellation),
            salons,
            clock.GetCurrentInstant()
        );

    /// <param name="Salons">All the practice's, by id: whoever was let in comes from another.</param>
    /// <param name="AllSalons">Whether the person sees the clients of every salon of the practice.</param>
    public sealed record Screen(
        LocalDate Today,
        IReadOnlyDictionary<Guid, SalonToday> Salons,
        bool AllSalons,
        GapReport Promise,
        GapRiskReport GapRisks,
        IReadOnlyList<SalonLoadAndCapacity> Load,
        IReadOnlyList<WorkshopOrderLoad> Orders
    );
}
