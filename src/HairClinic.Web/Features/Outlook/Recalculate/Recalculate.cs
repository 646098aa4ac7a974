using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Outlook;

/// <summary>What the figures were calculated from and when; a run now, how far it is, and stopping it.</summary>
public sealed class Recalculate(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await db.Database.OpenConnectionAsync(cancellation);
        var newest = await db
            .Recalculations.AsNoTracking()
            .OrderByDescending(r => r.EndedAt == null)
            .ThenByDescending(r => r.AskedAt)
            .FirstOrDefaultAsync(cancellation);
        var done = newest?.State == RecalculationState.Done ? newest : await RecalculationQueue.FindLastDoneAsync(db, cancellation);
        var zone = await db
            .Salons.Where(s => current.Person.Salons.Contains(s.Id))
            .OrderBy(s => s.Id)
            .Select(s => s.Zone)
            .FirstOrDefaultAsync(cancellation);
        return new Screen(
            newest is { IsOver: false }
                ? new Progress(newest.Id, newest.State, newest.Stage, newest.Done, newest.Total, newest.StopAsked)
                : null,
            done is null ? null : await LastAsync(db, done, cancellation),
            newest is { State: RecalculationState.Failed or RecalculationState.Stopped }
                ? new Broken(newest.EndedAt!.Value, newest.State, newest.Fault)
                : null,
            zone is null ? DateTimeZone.Utc : DateTimeZoneProviders.Tzdb[zone],
            clock.GetCurrentInstant()
        )
        {
            Unanswered = (await WearModelPair.LoadAsync(db, cancellation)).Bases,
        };
    }

    /// <summary>Asks for a run now; one that waits or goes on already is the answer too.</summary>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(Recalculate),
            input,
            async db => new Outcome(
                await RecalculationQueue.RequestAsync(db, current.Person.PersonId, clock.GetCurrentInstant(), cancellation)
            ),
            cancellation
        );

    /// <remarks>Without a key: a second time says the same. The run itself may be saving how far it is at this very moment.</remarks>
    /// <exception cref="Refusal">It has ended.</exception>
    public async Task StopAsync(Guid id, CancellationToken cancellation)
    {
        if (await RecalculationQueue.UpdateRunAsync(databases, id, run => run.AskToStop(), cancellation) is null)
            throw new Refusal("It has ended already.");
    }

    // A run's fits are those made while it ran.
    private static async Task<LastRun> LastAsync(ClinicDb db, Recalculation run, CancellationToken cancellation)
    {
        var (from, to) = (run.StartedAt ?? run.AskedAt, run.EndedAt!.Value);
        var fits = await db
            .StoredFits.AsNoTracking()
            .Where(f => f.FittedAt >= from && f.FittedAt <= to)
            .Select(f => new
            {
                f.Quantity,
                f.DataCut,
                f.Spells,
            })
            .ToListAsync(cancellation);
        return new(
            to,
            to - from,
            fits.Select(f => (LocalDate?)f.DataCut).Max(),
            fits.Where(f => f.Quantity == LifetimeKind.Hold).Sum(f => f.Spells),
            fits.Where(f => f.Quantity == LifetimeKind.Life).Sum(f => f.Spells),
            run.Total
        );
    }

    /// <param name="Running">The run that waits or goes on.</param>
    /// <param name="Last">The newest that came to its end: what the figures stand on.</param>
    /// <param name="Broken">Where the newest of all failed or was stopped.</param>
    public sealed record Screen(Progress? Running, LastRun? Last, Broken? Broken, DateTimeZone Zone, Instant Now)
    {
        /// <summary>What predictions stand on, where the newest recalculation found no answer.</summary>
        public IReadOnlyList<ModelBasis> Unanswered { get; init; } = [];
    }

    public sealed record Progress(Guid Id, RecalculationState State, RecalculationStage Stage, int Done, int Total, bool StopAsked);

    /// <param name="DataCut">The last day that is in it.</param>
    public sealed record LastRun(Instant EndedAt, Duration Took, LocalDate? DataCut, int Holds, int Lives, int Clients);

    public sealed record Broken(Instant EndedAt, RecalculationState State, string? Fault);

    public sealed record Input;

    public sealed record Outcome(Guid Id);
}
