using HairClinic.Domain.Replay;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Workers;

/// <summary>Works out how well the program would have said the practice's past: at most once a week after the night's run, or when somebody asks.</summary>
public sealed class PastReplayRunner(ClinicDbFactory databases, IClock clock)
{
    /// <param name="afterRun">A recalculation was just carried out.</param>
    /// <returns>Whether it was worked out.</returns>
    public async Task<bool> RunAsync(bool afterRun, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var asked = await PastReplayStore.IsAskedAsync(db, cancellation);
        if (!asked && !afterRun)
            return false;
        await using var gate = databases.Open();
        await using var held = await gate.Database.BeginTransactionAsync(cancellation);
        if (!await WriteLock.TryLockAsync(gate, "replay", cancellation))
            return false;
        bool due;
        try
        {
            due = await RefreshAsync(db, asked, cancellation);
        }
        catch when (asked && !cancellation.IsCancellationRequested)
        {
            // It would fail again at once: whoever still wants it asks again.
            await PastReplayStore.ForgetAskedAsync(db, cancellation);
            throw;
        }
        await held.CommitAsync(cancellation);
        return due;
    }

    private async Task<bool> RefreshAsync(ClinicDb db, bool asked, CancellationToken cancellation)
    {
        var today = await RecalculationRunner.CutAsync(db, clock.GetCurrentInstant(), cancellation);
        var readers = await PageResultRefresher.ReadersAsync(db, cancellation);
        var kept = asked ? null : await PastReplayStore.FindNewestAsync(db, cancellation);
        var due = kept?.IsDueAgain(today) ?? true;
        var result = due ? PastReplay.Run(await PastRecords.LoadAsync(db, today, cancellation), cancellation) : kept!;
        // Who may look changes from day to day: what stands is kept for them all the same.
        await PastReplayStore.ReplaceAsync(db, readers, result, cancellation);
        return due;
    }
}
