using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Learning;
using HairClinic.Web.Practices;
using HairClinic.Web.Workers.Mail;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Workers;

/// <summary>Does one practice's work, item by item. What fails is tried again later and says why.</summary>
public sealed partial class PracticeWork(
    ClinicDbFactory databases,
    DueDateRefresher dueDates,
    IMailRoute mail,
    PhotoBook photos,
    CurrentActor current,
    IClock clock,
    ILogger<PracticeWork> log
)
{
    private static readonly Duration Soon = Duration.FromSeconds(5);

    /// <returns>How many items were tried, done or not.</returns>
    public async Task<int> RunAsync(CancellationToken cancellation)
    {
        var tried = 0;
        while (await RunOneAsync(cancellation))
            tried++;
        return tried;
    }

    /// <remarks>The item stays locked until its end is written down: whoever dies in between leaves it to the next.</remarks>
    private async Task<bool> RunOneAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await WorkBook.TakeAsync(db, clock.GetCurrentInstant(), cancellation) is not { } item)
            return false;
        try
        {
            if (await DoAsync(item, cancellation))
                item.Done(clock.GetCurrentInstant());
            else
                item.Wait(clock.GetCurrentInstant() + Soon);
        }
        catch (NoMailWayException)
        {
            // Nothing is kept of it: once a mail server is set, an old letter would only confuse.
            item.GiveUp(nameof(NoMailWayException), clock.GetCurrentInstant());
        }
        catch (Exception e) when (!cancellation.IsCancellationRequested)
        {
            var error = WorkFaults.Name(e);
            item.Failed(error, clock.GetCurrentInstant());
            LogFailure(log, item.Kind, item.Id, item.Attempts, error);
        }
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }

    /// <returns>False: it has to wait for something else to end.</returns>
    private async Task<bool> DoAsync(WorkItem item, CancellationToken cancellation)
    {
        switch (item.Kind)
        {
            case WorkKind.RefreshDueDates:
                await using (var db = databases.Open())
                    await dueDates.RunAsync(db, WorkItems.Read<RefreshDueDatesBody>(item), cancellation);
                break;
            case WorkKind.SendMail:
                await SendAsync(WorkItems.Read<Letter>(item), cancellation);
                // A letter may hold a sign-in link: once it is sent, nobody needs it here.
                item.Forget();
                break;
            case WorkKind.RemoveFiles:
                foreach (var file in WorkItems.Read<RemoveFilesBody>(item).Files)
                    photos.Delete(current.Actor.PracticeId, file);
                break;
            case WorkKind.PlanOrders:
                await using (var db = databases.Open())
                {
                    var book = await OrderBook.LoadAsync(db, cancellation);
                    var clients = WorkItems.Read<PlanOrdersBody>(item).ClientIds;
                    await SalonPlans.StoreAsync(db, book, clients, clock.GetCurrentInstant(), cancellation);
                }
                break;
            case WorkKind.AskForClient:
                await using (var db = databases.Open())
                    await ClientAsks.AnswerAsync(db, WorkItems.Read<AskForClientBody>(item), item.AskedAt, cancellation);
                // A number of somebody's stood in it, whoever it is.
                item.Forget();
                break;
            case WorkKind.Reckon:
                await using (var db = databases.Open())
                {
                    // A run that has begun may have read what was there before.
                    if (await ReckoningBook.RunningAsync(db, cancellation) is { StartedAt: not null })
                        return false;
                    await ReckoningBook.AskAsync(db, askedBy: null, clock.GetCurrentInstant(), cancellation);
                }
                break;
            default:
                throw new InvalidOperationException($"Nobody does {item.Kind}.");
        }
        return true;
    }

    // Who wants no letters gets none; a link they asked for is no letter of ours.
    private async Task SendAsync(Letter letter, CancellationToken cancellation)
    {
        await using (var db = databases.Open())
        {
            if (letter.ClientId is { } client && await db.ClientPreferences.AnyAsync(p => p.ClientId == client && !p.Letters, cancellation))
                return;
        }
        await mail.SendAsync(letter, cancellation);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Kind} {Id} failed at attempt {Attempt} ({Error}); it will be tried again.")]
    private static partial void LogFailure(ILogger logger, WorkKind kind, Guid id, int attempt, string error);
}
