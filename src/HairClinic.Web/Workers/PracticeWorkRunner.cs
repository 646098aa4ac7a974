using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Workers;

/// <summary>Does one practice's work. What fails is tried again later and says why; in the end it is given up, and stands so.</summary>
public sealed partial class PracticeWorkRunner(
    ClinicDbFactory databases,
    DueDateRefresher dueDates,
    LetterSender letters,
    PhotoStore photos,
    CurrentActor current,
    IClock clock,
    ILogger<PracticeWorkRunner> log
)
{
    private const int MostPlansAtOnce = 500;
    private static readonly Duration Soon = Duration.FromSeconds(5);

    /// <summary>All that is due, in every lane.</summary>
    /// <returns>How many items were tried, done or not.</returns>
    public async Task<int> RunAllDueAsync(CancellationToken cancellation)
    {
        var tried = 0;
        foreach (var lane in WorkConcurrencyGroup.All)
        {
            while (await RunNextAsync(lane, cancellation) is > 0 and var more)
                tried += more;
        }
        return tried;
    }

    /// <summary>The next item of a lane; of plans all that are due, for they ask for the same reading.</summary>
    /// <returns>How many items were tried, done or not.</returns>
    public async Task<int> RunNextAsync(WorkConcurrencyGroup lane, CancellationToken cancellation) =>
        lane == WorkConcurrencyGroup.Letters ? await letters.RunNextAsync(cancellation) : await RunLockedAsync(lane, cancellation);

    /// <remarks>The items stay locked until their end is written down: whoever dies in between leaves them to the next.</remarks>
    private async Task<int> RunLockedAsync(WorkConcurrencyGroup lane, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var most = lane == WorkConcurrencyGroup.Plans ? MostPlansAtOnce : 1;
        var items = await WorkQueue.LockDueAsync(db, lane.Kinds, most, clock.GetCurrentInstant(), cancellation);
        if (items.Count == 0)
            return 0;
        // What failed before is tried by itself, so that it takes no others down with it.
        if (items.Find(i => i.Attempts > 0) is { } failed)
            items = [failed];
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(lane.Patience);
        try
        {
            var done = await DoAsync(items, limit.Token);
            foreach (var item in items)
            {
                if (done)
                    item.Complete(clock.GetCurrentInstant());
                else
                    item.Postpone(clock.GetCurrentInstant() + Soon);
            }
        }
        catch (Exception e) when (!cancellation.IsCancellationRequested)
        {
            var error = WorkFaults.NameOf(e);
            foreach (var item in items)
            {
                item.RecordFailure(error, clock.GetCurrentInstant());
                if (item.Fate is null)
                    LogFailure(log, item.Kind, item.Id, item.Attempts, error);
                else
                    LogGivenUp(log, item.Kind, item.Id, item.Attempts, error);
            }
        }
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return items.Count;
    }

    /// <returns>False: it has to wait for something else to end.</returns>
    private async Task<bool> DoAsync(List<WorkItem> items, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var item = items[0];
        switch (item.Kind)
        {
            case WorkKind.RefreshDueDates:
                await dueDates.RunAsync(db, WorkItemFactory.ReadBody<RefreshDueDatesBody>(item), cancellation);
                break;
            case WorkKind.RemoveFiles:
                foreach (var file in WorkItemFactory.ReadBody<RemoveFilesBody>(item).Files)
                    photos.DeleteFiles(current.Actor.PracticeId, file);
                break;
            case WorkKind.PlanOrders:
                var clients = items.SelectMany(i => WorkItemFactory.ReadBody<PlanOrdersBody>(i).ClientIds).Distinct().ToList();
                var book = await ReorderFacts.LoadAsync(db, cancellation);
                await ReorderPlanStore.RecalculateAsync(db, book, clients, clock.GetCurrentInstant(), cancellation);
                break;
            case WorkKind.AskForClient:
                await GrantRequestRecorder.RecordAsync(
                    db,
                    WorkItemFactory.ReadBody<RequestClientAccessBody>(item),
                    item.AskedAt,
                    cancellation
                );
                // A number of somebody's stood in it, whoever it is.
                item.ClearBody();
                break;
            case WorkKind.SpreadOrder:
                await OrderLines.FollowAsync(db, WorkItemFactory.ReadBody<SpreadOrderBody>(item), clock.GetCurrentInstant(), cancellation);
                break;
            case WorkKind.Recalculate:
                // A run that has begun may have read what was there before.
                if (await RecalculationQueue.FindUnfinishedAsync(db, cancellation) is { StartedAt: not null })
                    return false;
                await RecalculationQueue.RequestAsync(db, askedBy: null, clock.GetCurrentInstant(), cancellation);
                break;
            default:
                throw new InvalidOperationException($"Nobody does {item.Kind}.");
        }
        return true;
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Kind} {Id} failed at attempt {Attempt} ({Error}); it will be tried again.")]
    private static partial void LogFailure(ILogger logger, WorkKind kind, Guid id, int attempt, string error);

    [LoggerMessage(Level = LogLevel.Error, Message = "{Kind} {Id} failed at attempt {Attempt} ({Error}) and is given up.")]
    private static partial void LogGivenUp(ILogger logger, WorkKind kind, Guid id, int attempt, string error);
}
