using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Learning;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Workers;

/// <summary>Carries out a recalculation: fits hold and life to the practice's records, then plans every client's next order and the weeks ahead, and keeps what pages show.</summary>
/// <remarks>
/// The program may stop at any moment: the run stays open, and the next one to pick it up starts again. What is stored is replaced piece by piece,
/// each in a save of its own.
/// </remarks>
public sealed class RecalculationRunner(ClinicDbFactory databases, PageResultRefresher pages, IClock clock)
{
    private const int BatchSize = 500;
    private const int KeptRuns = 60;

    /// <returns>Whether there was one to carry out.</returns>
    public async Task<bool> RunAsync(CancellationToken cancellation)
    {
        await using var gate = databases.Open();
        // Asked every few seconds: mostly there is none, and then nothing needs to be held.
        if (await RecalculationQueue.FindUnfinishedAsync(gate, cancellation) is null)
            return false;
        await using var held = await gate.Database.BeginTransactionAsync(cancellation);
        if (
            !await WriteLock.TryLockAsync(gate, "recalculation", cancellation)
            || await RecalculationQueue.FindUnfinishedAsync(gate, cancellation) is not { } run
        )
            return false;
        try
        {
            await SayAsync(run.Id, r => r.Start(clock.GetCurrentInstant()), cancellation);
            var done = await RecalculateAsync(run.Id, cancellation);
            await SayAsync(
                run.Id,
                r => r.Finish(done ? RecalculationState.Done : RecalculationState.Stopped, clock.GetCurrentInstant()),
                cancellation
            );
        }
        catch (Exception e) when (!cancellation.IsCancellationRequested)
        {
            await SayAsync(run.Id, r => r.Finish(RecalculationState.Failed, clock.GetCurrentInstant(), WorkFaults.NameOf(e)), cancellation);
        }
        await RecalculationQueue.DeleteOldRunsAndFitsAsync(gate, KeptRuns, cancellation);
        await held.CommitAsync(cancellation);
        return true;
    }

    /// <returns>False: somebody asked it to stop.</returns>
    private async Task<bool> RecalculateAsync(Guid runId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var now = clock.GetCurrentInstant();
        var cut = await CutAsync(db, now, cancellation);
        var factors = await WearModelPair.LoadWearFactorsAsync(db, cancellation);
        var last = await WearModelPair.LoadCheckedFitsAsync(db, cancellation);
        var checks = await DateCheckFacts.LoadAsync(db, unitIds: null, cancellation);

        if (!await ReachAsync(runId, RecalculationStage.FittingHold, 0, 0, cancellation))
            return false;
        var windows = await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation);
        var holds = await HoldFacts.LoadAsync(db, windows, clientIds: null, cancellation);
        var hold = CheckedWearFit.OfHolds(
            [.. holds.AllSpells(cut)],
            WearModelPair.FactorsByHabit(factors, LifetimeKind.Hold),
            last.GetValueOrDefault(LifetimeKind.Hold),
            checks,
            cut,
            clock.GetCurrentInstant()
        );
        await StoreAsync(db, hold, DateCheckKind.BondHeld, checks, cancellation);

        if (!await ReachAsync(runId, RecalculationStage.FittingLife, 0, 0, cancellation))
            return false;
        var before = await ReorderFacts.LoadAsync(db, cancellation);
        var units = await LifeFacts.LoadAsync(db, clientIds: null, cancellation);
        List<LifeSpell> lives = [.. units.Spells(before.Kinds, cut)];
        var lifeFactors = WearModelPair.FactorsByHabit(factors, LifetimeKind.Life);
        var lastLife = last.GetValueOrDefault(LifetimeKind.Life);
        var life = CheckedWearFit.OfLives(lives, lifeFactors, lastLife, checks, cut, clock.GetCurrentInstant());
        GradeLearner.Learn(life.Fit, lastLife, lives, lifeFactors);
        await StoreAsync(db, life, DateCheckKind.UnitLasted, checks, cancellation);
        await StreamWatcher.WatchAsync(db, hold, life, lifeFactors, cut, cancellation);
        db.ChangeTracker.Clear();

        await PreparationRefresher.RefreshAsync(db, units, before.Settings.PreparationDays, cut, cancellation);
        var arrived = await LeadTimeRefresher.RefreshAsync(db, before.LeadTimesOn(cut), [.. before.Kinds.Values], checks, cancellation);
        await WorkshopClosureProposer.ProposeAsync(db, before, arrived, checks, cut, cancellation);
        await db.SaveChangesAsync(cancellation);
        db.ChangeTracker.Clear();
        return await PlanAsync(db, runId, now, cancellation);
    }

    private async Task<bool> PlanAsync(ClinicDb db, Guid runId, Instant now, CancellationToken cancellation)
    {
        var book = await ReorderFacts.LoadAsync(db, cancellation);
        var dues = await DueFacts.LoadAsync(db, cancellation);
        var ahead = new WorkloadForecaster(book, dues, await WorkloadForecaster.LoadVisitMinutesAsync(db, cancellation), now);
        await db.ReorderPlans.Where(p => !ReorderPlanStore.ClientsToPlan(db).Any(c => c.Id == p.ClientId)).ExecuteDeleteAsync(cancellation);
        var clients = await ReorderPlanStore.ClientsToPlan(db).OrderBy(c => c.Id).Select(c => c.Id).ToListAsync(cancellation);
        foreach (var (number, batch) in clients.Chunk(BatchSize).Index())
        {
            if (!await ReachAsync(runId, RecalculationStage.Planning, number * BatchSize, clients.Count, cancellation))
                return false;
            var orders = await ReorderPlanStore.RecalculateAsync(db, book, batch, now, cancellation);
            await ahead.AddClientsAsync(db, batch, orders, cancellation);
            db.ChangeTracker.Clear();
        }
        if (!await ReachAsync(runId, RecalculationStage.Storing, clients.Count, clients.Count, cancellation))
            return false;
        await ahead.StageRowsAsync(db, cancellation);
        await db.SaveChangesAsync(cancellation);
        if (!await ReachAsync(runId, RecalculationStage.Storing, clients.Count, clients.Count, cancellation))
            return false;
        await pages.RunAsync(cancellation);
        return true;
    }

    private static async Task StoreAsync<T>(
        ClinicDb db,
        CheckedWearFit<T> made,
        DateCheckKind kind,
        DateCheckFacts checks,
        CancellationToken cancellation
    )
        where T : WearSpell
    {
        await checks.StageAsync(db, made.Asked, [kind], cancellation);
        db.StoredFits.Add(made.Fit);
        await db.SaveChangesAsync(cancellation);
        db.ChangeTracker.Clear();
    }

    /// <summary>The last day that is over or under way in every salon.</summary>
    public static async Task<LocalDate> CutAsync(ClinicDb db, Instant now, CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().ToListAsync(cancellation);
        return salons.Count == 0 ? now.InUtc().Date : salons.Min(s => s.DayOf(now));
    }

    private async Task<bool> ReachAsync(Guid runId, RecalculationStage stage, int done, int total, CancellationToken cancellation) =>
        !(await SayAsync(runId, r => r.ReportProgress(stage, done, total), cancellation)).StopAsked;

    // On a connection of its own: whoever watches sees it at once, and a wish to stop is read.
    private async Task<Recalculation> SayAsync(Guid runId, Action<Recalculation> say, CancellationToken cancellation) =>
        await RecalculationQueue.UpdateRunAsync(databases, runId, say, cancellation)
        ?? throw new InvalidOperationException("The run that goes on is not there any more.");
}
