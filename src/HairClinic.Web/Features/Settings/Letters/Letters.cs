using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.Settings;

/// <summary>Whether letters reach clients and staff, what stands in the way, and a letter to oneself to see it.</summary>
public sealed partial class Letters(
    MailStatusMonitor status,
    IMailSender route,
    MailSettings settings,
    SiteAddress site,
    PracticeJobRunner jobs,
    ClinicDbFactory databases,
    CurrentActor current,
    IClock clock,
    ILogger<Letters> log
)
{
    private const int MostListed = 100;
    private static readonly Duration Listed = Duration.FromDays(30);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <param name="ask">Whether to ask the mail server, or to say what was last heard of it.</param>
    public async Task<Screen> OpenAsync(bool ask, CancellationToken cancellation)
    {
        var state = ask ? await status.CheckReadinessAsync(cancellation) : await status.LastAsync(cancellation);
        // Work is read again only by jobs. How much waits says nothing of whom it is for; of letters that are over only the envelope is
        // left, and which client that names is asked as whoever looks.
        var (waiting, over, undone) = await AsJobAsync(async db =>
        {
            var zone = await db.Salons.OrderBy(s => s.Id).Select(s => s.Zone).FirstOrDefaultAsync(cancellation) ?? "UTC";
            var failed = db.WorkItems.Where(w => w.Kind == WorkKind.SendMail && w.DoneAt == null && w.Attempts > 0);
            var since = clock.GetCurrentInstant() - Listed;
            var ended = await db
                .WorkItems.AsNoTracking()
                .Where(w => w.Kind == WorkKind.SendMail && w.Fate != null && w.DoneAt > since)
                .OrderByDescending(w => w.DoneAt)
                .Take(MostListed)
                .ToListAsync(cancellation);
            return (
                new Waiting(
                    await failed.CountAsync(cancellation),
                    (await failed.MinAsync(w => (Instant?)w.AskedAt, cancellation))?.InZone(DateTimeZoneProviders.Tzdb[zone]).LocalDateTime,
                    await failed.OrderByDescending(w => w.NotBefore).Select(w => w.LastError).FirstOrDefaultAsync(cancellation)
                ),
                ended
                    .Select(w =>
                        (Item: w, Letter: WorkItemFactory.ReadBody<Letter>(w), Day: w.AskedAt.InZone(DateTimeZoneProviders.Tzdb[zone]).Date)
                    )
                    .ToList(),
                await GivenUp(db).CountAsync(cancellation)
            );
        });
        var codes = await CodesAsync([.. over.Select(o => o.Letter.For).OfType<Guid>()], cancellation);
        return new Screen(state, waiting, settings.Host, settings.From, site.Url, await OwnAddressAsync(cancellation))
        {
            Lost =
            [
                .. over.Select(o => new UndeliveredLetter(
                    o.Letter.Kind,
                    o.Day,
                    o.Letter.For is { } client ? codes.GetValueOrDefault(client) : null,
                    o.Letter.For is not null,
                    o.Item.Fate!.Value,
                    o.Item.LastError
                )),
            ],
            Undone = undone,
        };
    }

    /// <summary>Work other than letters that was given up is begun anew.</summary>
    /// <returns>How much.</returns>
    public Task<int> RetryNonMailWorkAsync(CancellationToken cancellation) =>
        AsJobAsync(async db =>
        {
            var items = await GivenUp(db).ToListAsync(cancellation);
            foreach (var item in items)
                item.BeginAnew(clock.GetCurrentInstant());
            await db.SaveChangesAsync(cancellation);
            return items.Count;
        });

    /// <summary>Sends a letter to whoever asks, now, and says what came of it.</summary>
    /// <returns>Where it went.</returns>
    /// <exception cref="Refusal">They have no address, there is no way, or the mail server did not take it; in words.</exception>
    public async Task<Outcome> SendTestAsync(CancellationToken cancellation)
    {
        if (await OwnAddressAsync(cancellation) is not { } address)
            throw new Refusal("Your sign-in has no e-mail address yet. Add it under Practice, People.");
        // Discreet, as every letter: it names neither practice nor trade.
        var letter = new Letter(address, "A test", "You asked for this letter to see whether letters arrive. They do.");
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(Patience);
        try
        {
            await route.SendAsync(letter, LetterDelivery.ForSingleAttempt(), patience.Token);
        }
        catch (NoMailWayException)
        {
            throw new Refusal(MailReadiness.NoServer);
        }
        catch (Exception e) when (!cancellation.IsCancellationRequested)
        {
            var fault = WorkFaults.NameOf(e);
            LogFailed(log, fault);
            throw MailReadiness.WhyNotSent(fault);
        }
        return new Outcome(address, (await status.LastAsync(cancellation)).Way);
    }

    private static IQueryable<WorkItem> GivenUp(ClinicDb db) =>
        db.WorkItems.Where(w => w.Kind != WorkKind.SendMail && w.Fate == WorkOutcome.GivenUp);

    private Task<T> AsJobAsync<T>(Func<ClinicDb, Task<T>> work) =>
        jobs.RunJobAsync(
            current.Actor.PracticeId,
            "letters",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await work(db);
            }
        );

    private async Task<Dictionary<Guid, string>> CodesAsync(List<Guid> clients, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db.Clients.Where(c => clients.Contains(c.Id)).ToDictionaryAsync(c => c.Id, c => c.Code, cancellation);
    }

    private async Task<string?> OwnAddressAsync(CancellationToken cancellation)
    {
        var person = current.Person;
        await using var db = databases.Open();
        var email = await db
            .Users.Where(u => u.PracticeId == person.PracticeId && u.PersonId == person.PersonId)
            .Select(u => u.Email)
            .SingleOrDefaultAsync(cancellation);
        return string.IsNullOrWhiteSpace(email) ? null : email;
    }

    /// <param name="Server">The mail server's name; null where none is set.</param>
    /// <param name="From">The address letters come from.</param>
    /// <param name="SiteUrl">Where links in letters lead; null where it is not known.</param>
    /// <param name="OwnAddress">Of whoever looks; null where their sign-in has none.</param>
    public sealed record Screen(MailReadiness State, Waiting Waiting, string? Server, string From, string? SiteUrl, string? OwnAddress)
    {
        /// <summary>Those of the last weeks, the newest first.</summary>
        public IReadOnlyList<UndeliveredLetter> Lost { get; init; } = [];

        /// <summary>How much other work behind the screens was given up.</summary>
        public int Undone { get; init; }
    }

    /// <summary>Letters that were tried and did not go out, and are tried again.</summary>
    /// <param name="Since">When the oldest of them was asked for, by the clock of the first salon.</param>
    /// <param name="LastFault">As <see cref="WorkFaults"/> names it.</param>
    public sealed record Waiting(int Count, LocalDateTime? Since, string? LastFault);

    public sealed record Outcome(string Address, MailWay Way);

    [LoggerMessage(Level = LogLevel.Warning, Message = "A test letter was not taken ({Fault}).")]
    private static partial void LogFailed(ILogger logger, string fault);
}
