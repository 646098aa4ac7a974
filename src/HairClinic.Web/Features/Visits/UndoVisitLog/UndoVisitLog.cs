using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using Care = HairClinic.Web.Features.Visits.LogVisit;
using Rebond = HairClinic.Web.Features.Visits.LogRebond;
using TakenDown = HairClinic.Web.Features.Visits.LogTakeDown;

namespace HairClinic.Web.Features.Visits;

/// <summary>
/// Takes a wrong log back on the same day: the visit is in the chair again and the old bond on the head. What was written is a draft
/// of whoever takes it back; the bond that was made stays, marked, so that its product and lot are found on whose head they may be.
/// </summary>
public sealed class UndoVisitLog(ClinicDbFactory databases, WriteOnce writes, DraftStore drafts, CurrentActor current, IClock clock)
{
    /// <returns>Of each visit what taking its log back would do, or why it cannot be taken back.</returns>
    public async Task<IReadOnlyDictionary<Guid, Screen>> OpenAsync(IReadOnlyCollection<Guid> visitIds, CancellationToken cancellation)
    {
        if (visitIds.Count == 0)
            return new Dictionary<Guid, Screen>();
        await using var db = databases.Open();
        // Tried on copies that are thrown away: the answer is the very rule's.
        var logs = await Logs(db, visitIds, db.Visits.AsNoTracking().Include(v => v.Record)).ToListAsync(cancellation);
        return logs.ToDictionary(log => log.Visit.Id, Try);
    }

    /// <exception cref="Refusal">Not logged, another day or person, something was built on it since, or the client is elsewhere.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit or a bond at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(UndoVisitLog), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (SlotSaveErrors.FindClash(e) is SlotClash.Client)
        {
            throw new Refusal("This client was given another visit at that time since. Call that one off first.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var log =
            await Logs(db, [input.VisitId], db.Visits.Include(v => v.Record)).SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This visit is not in the book of your salons.");
        if (log.Made is { } written)
            await db.Set<BondProduct>().Where(p => p.BondId == written.Id).LoadAsync(cancellation);
        if (log.Record is { RemovedUnitId: not null } taken)
            await db.TakeDownProducts.Where(p => p.VisitRecordId == taken.Id).LoadAsync(cancellation);
        var words = WordsOf(log);
        var lent = log.MadeLoan;
        var record = Undo(log);
        if (lent is not null)
            db.UnitLoans.Remove(lent);
        switch (words)
        {
            case Rebond.Input rebond:
                await drafts.StageAsync(db, nameof(LogRebond), log.Visit.Id, rebond, cancellation);
                break;
            case TakenDown.Input takenDown:
                await drafts.StageAsync(db, nameof(LogTakeDown), log.Visit.Id, takenDown, cancellation);
                break;
            case Care.Input care:
                await drafts.StageAsync(db, nameof(LogVisit), log.Visit.Id, care, cancellation);
                break;
        }
        db.VisitRecords.Remove(record);
        if (log.Made is { } made)
            await CloseFirstAsync(db, made, cancellation);
        return new Outcome(log.Visit.Id, log.Visit.State);
    }

    // A head has one open bond at any moment: the wrong one is closed before the old one is open again.
    private static async Task CloseFirstAsync(ClinicDb db, Bond made, CancellationToken cancellation)
    {
        await db.Database.BeginTransactionAsync(cancellation);
        var closed = await db
            .Bonds.Where(b => b.Id == made.Id && b.Version == made.Version)
            .ExecuteUpdateAsync(
                b => b.SetProperty(x => x.RemovedOn, made.RemovedOn).SetProperty(x => x.RemovedBecause, made.RemovedBecause),
                cancellation
            );
        if (closed == 0)
            throw new DbUpdateConcurrencyException();
        db.Entry(made).State = EntityState.Detached;
    }

    private Screen Try(Log log)
    {
        try
        {
            var (bare, until) = (log.IsTakeDownOnly, log.Before?.NoBondUntil);
            var record = Undo(log);
            return new Screen(
                WhyNot: null,
                record.Note is not null,
                record.Grades != InspectionGrades.NotLookedAt,
                record.FoundLifted,
                log.Made?.WaitsKept is not null,
                log.Made is { } made ? log.Units.Single(u => u.Id == made.HairSystemId).Serial : null
            )
            {
                Off = bare ? log.Units.Single(u => u.Id == record.RemovedUnitId).Serial : null,
                Until = bare && until is not null,
            };
        }
        catch (Refusal refusal)
        {
            return new Screen(refusal, false, false, false, false, null);
        }
    }

    private VisitRecord Undo(Log log)
    {
        var units = log.Units.ToDictionary(u => u.Id);
        var (made, before) = (log.Made, log.Before);
        var madeWasFirst = made is not null && !log.Bonds.Any(b => b.Id != made.Id && b.HairSystemId == made.HairSystemId);
        return log.Visit.UndoRecord(
            made is null ? null : (made, units[made.HairSystemId]),
            madeWasFirst,
            before is null ? null : (before, units[before.HairSystemId]),
            log.BondedSince,
            log.Salon,
            clock.GetCurrentInstant(),
            current.Actor.Id,
            current.Person.StaffRole is StaffRole.Owner or StaffRole.Manager,
            log.EndedLoan
        );
    }

    // Read before the undoing forgets it.
    private static object? WordsOf(Log log) =>
        log.Record is not { } record ? null
        : log is { IsTakeDownOnly: true, Before: { } worn } ? TakenDown.Input.FromRecord(record, worn)
        : log.Made is { } made ? Rebond.Input.FromRecord(record, made, log.Before, log.Salon)
        : Care.Input.FromRecord(record, log.Before, log.Salon.DayOf(record.RecordedAt), log.Purpose);

    private IQueryable<Log> Logs(ClinicDb db, IReadOnlyCollection<Guid> visitIds, IQueryable<Visit> visits)
    {
        var salons = current.Person.Salons;
        return from visit in visits
            where visitIds.Contains(visit.Id) && salons.Contains(visit.SalonId)
            select new Log
            {
                Visit = visit,
                Salon = db.Salons.First(s => s.Id == visit.SalonId),
                Purpose = db.ServiceKinds.First(k => k.Id == visit.ServiceKindId).Purpose,
                Made = db.Bonds.FirstOrDefault(b => b.VisitId == visit.Id),
                Bonds = db
                    .Bonds.Where(b => b.ClientId == visit.ClientId)
                    .OrderByDescending(b => b.AppliedOn)
                    .ThenByDescending(b => b.AppliedAt)
                    .ToList(),
                // Theirs, and what was lent to them.
                Units = db
                    .HairSystems.Where(u =>
                        u.ClientId == visit.ClientId
                        || u.ClientId == null && db.Bonds.Any(b => b.HairSystemId == u.Id && b.ClientId == visit.ClientId)
                    )
                    .ToList(),
                Loans = db.UnitLoans.Where(l => l.ClientId == visit.ClientId).ToList(),
            };
    }

    /// <summary>A log with all that it changed.</summary>
    private sealed record Log
    {
        public required Visit Visit { get; init; }

        public VisitRecord? Record => Visit.Record;

        public required Salon Salon { get; init; }
        public ServicePurpose Purpose { get; init; }
        public Bond? Made { get; init; }
        public required List<Bond> Bonds { get; init; }
        public required List<HairSystem> Units { get; init; }
        public required List<UnitLoan> Loans { get; init; }

        /// <summary>The loan that began with the bond: it has its id.</summary>
        public UnitLoan? MadeLoan => Made is { } made ? Loans.Find(l => l.Id == made.Id) : null;

        /// <summary>The loan that ended as its unit came off; none where the unit went on again, or where only an earlier one is over.</summary>
        public UnitLoan? EndedLoan =>
            Before is { RemovedOn: { } off } before && Made?.HairSystemId != before.HairSystemId
                ? Loans.Where(l => l.HairSystemId == before.HairSystemId && l.BackOn >= off).MaxBy(l => l.BackOn)
                : null;

        /// <summary>A bond came off and none was made.</summary>
        public bool IsTakeDownOnly => Made is null && Record?.RemovedUnitId is not null;

        /// <summary>
        /// A log that took a unit off ended its last bond but the one that it made: what came off at home did so on an earlier day. Any
        /// other left the open one on.
        /// </summary>
        public Bond? Before =>
            Record?.RemovedUnitId is { } off
                ? Bonds.FirstOrDefault(b => b.Id != Made?.Id && !b.IsOpen && b.HairSystemId == off)
                : Bonds.FirstOrDefault(b => b.IsOpen && b.Id != Made?.Id);

        public bool BondedSince => Bonds.Any(b => b.Id != Made?.Id && (b.IsOpen || b.AppliedAt > Record?.RecordedAt));
    }

    /// <param name="WhyNot">Why it cannot be taken back; null when it can.</param>
    /// <param name="Note">There is a note in it; and so on.</param>
    /// <param name="Serial">The unit whose bond goes; null when it made none.</param>
    public sealed record Screen(Refusal? WhyNot, bool Note, bool Grades, bool Lift, bool Waits, string? Serial)
    {
        /// <summary>The unit that came off, where no bond was made.</summary>
        public string? Off { get; init; }

        /// <summary>It was said until when no bond is made.</summary>
        public bool Until { get; init; }
    }

    public sealed record Input(Guid VisitId);

    public sealed record Outcome(Guid VisitId, VisitState State);
}
