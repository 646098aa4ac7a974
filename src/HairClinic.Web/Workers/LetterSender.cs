using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Workers;

/// <summary>Sends one practice's letters.</summary>
/// <remarks>
/// No transaction is open while the mail server is talked to: the item is held for a minute, and whoever dies holding it leaves it to
/// the next. That it is being handed over is written down before the first word leaves; a letter found so went, or did not, and nobody
/// knows: it is never sent again by itself.
/// </remarks>
public sealed partial class LetterSender(ClinicDbFactory databases, IMailSender mail, IClock clock, ILogger<LetterSender> log)
{
    /// <summary>Longer than the lane's patience: what is held is in somebody's hands or nobody's.</summary>
    private static readonly Duration Held = Duration.FromMinutes(1);

    public async Task<int> RunNextAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await DequeueAsync(db, cancellation) is not { } item)
            return 0;
        try
        {
            await TryAsync(db, item, cancellation);
            // Stopping the program must not lose the outcome.
            await db.SaveChangesAsync(CancellationToken.None);
        }
        catch (DbUpdateConcurrencyException)
        {
            // It went with its client, who was erased, or another took it up after it had been held too long.
        }
        cancellation.ThrowIfCancellationRequested();
        return 1;
    }

    private async Task<WorkItem?> DequeueAsync(ClinicDb db, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var now = clock.GetCurrentInstant();
        if (await WorkQueue.LockDueAsync(db, WorkConcurrencyGroup.Letters.Kinds, 1, now, cancellation) is not [var item])
            return null;
        item.Claim(now + Held);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return item;
    }

    private async Task TryAsync(ClinicDb db, WorkItem item, CancellationToken cancellation)
    {
        var letter = WorkItemFactory.ReadBody<Letter>(item);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(WorkConcurrencyGroup.Letters.Patience);
        try
        {
            if (item.HandedAt is not null)
                End(item, letter, WorkOutcome.Unsure, WorkFaults.Interrupted);
            else if (letter.Until <= clock.GetCurrentInstant())
                End(item, letter, WorkOutcome.GivenUp, WorkFaults.TooLate);
            else
            {
                if (await IsWantedAsync(db, letter, limit.Token))
                    await mail.SendAsync(letter, new LetterDelivery(item.Id, () => HandOverAsync(db, item)), limit.Token);
                item.Complete(clock.GetCurrentInstant());
                // A letter may hold a sign-in link: once it is sent, it is not needed here.
                item.ClearBody();
            }
        }
        catch (LetterUnsureException e)
        {
            End(item, letter, WorkOutcome.Unsure, WorkFaults.NameOf(e));
        }
        catch (NoMailWayException)
        {
            // Nothing is kept of it: once a mail server is set, an old letter would only confuse.
            End(item, letter, WorkOutcome.GivenUp, nameof(NoMailWayException));
        }
        catch (Exception e) when (WorkFaults.IsPermanent(e))
        {
            End(item, letter, WorkOutcome.GivenUp, WorkFaults.NameOf(e));
        }
        catch (Exception) when (cancellation.IsCancellationRequested)
        {
            item.ReleaseClaim();
        }
        catch (Exception e) when (e is not DbUpdateConcurrencyException)
        {
            item.RecordFailure(WorkFaults.NameOf(e), clock.GetCurrentInstant(), letter.Until);
            if (item.Fate is { } fate)
                End(item, letter, fate, WorkFaults.NameOf(e));
            else
                LogFailure(log, item.Kind, item.Id, item.Attempts, WorkFaults.NameOf(e));
        }
    }

    // Who wants no letters gets none; a link they asked for is no letter of ours.
    private static async Task<bool> IsWantedAsync(ClinicDb db, Letter letter, CancellationToken cancellation) =>
        (letter.ClientId is not { } client || !await db.ClientPreferences.AnyAsync(p => p.ClientId == client && !p.Letters, cancellation))
        && await IsStillOursAsync(db, letter, cancellation);

    // Written before their need ended, or by whoever did not know of it: it goes to nobody.
    private static async Task<bool> IsStillOursAsync(ClinicDb db, Letter letter, CancellationToken cancellation)
    {
        if ((letter.For ?? letter.ClientId) is not { } client)
            return true;
        var ended = await db
            .Clients.Where(c => c.Id == client && c.LeftOn != null)
            .Select(c => new { Because = c.NeedEndedBecause })
            .SingleOrDefaultAsync(cancellation);
        return ended is null || letter.Kind == LetterKind.SignInLink && ended.Because?.KeepsOwnPage() == true;
    }

    private async Task HandOverAsync(ClinicDb db, WorkItem item)
    {
        item.BeginDelivery(clock.GetCurrentInstant());
        await db.SaveChangesAsync(CancellationToken.None);
    }

    private void End(WorkItem item, Letter letter, WorkOutcome fate, string error)
    {
        item.ClearBody(WorkItemFactory.WriteBody(letter.Redact()));
        item.End(fate, error, clock.GetCurrentInstant());
        if (fate is WorkOutcome.Unsure)
            LogUnsure(log, item.Kind, item.Id, error);
        else
            LogGivenUp(log, item.Kind, item.Id, error);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Kind} {Id} failed at attempt {Attempt} ({Error}); it will be tried again.")]
    private static partial void LogFailure(ILogger logger, WorkKind kind, Guid id, int attempt, string error);

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Kind} {Id} was not done ({Error}) and is given up; the page on letters has it.")]
    private static partial void LogGivenUp(ILogger logger, WorkKind kind, Guid id, string error);

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Kind} {Id} may have gone or not ({Error}); the page on letters has it.")]
    private static partial void LogUnsure(ILogger logger, WorkKind kind, Guid id, string error);
}
