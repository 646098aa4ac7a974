using HairClinic.Domain.Replay;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>How well the program would have said the practice's past, as it was last worked out; and having it worked out now.</summary>
public sealed class HowWellItSaid(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await db.Database.OpenConnectionAsync(cancellation);
        return new Screen(
            await PastReplayStore.FindAsync(db, current.Person, cancellation),
            await PastReplayStore.IsAskedAsync(db, cancellation),
            MayAsk
        );
    }

    /// <summary>Has it worked out now, in the background.</summary>
    /// <exception cref="Refusal">Whoever works in no salon yet is shown nothing of any.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(HowWellItSaid),
            input,
            async db =>
            {
                if (!MayAsk)
                    throw new Refusal("You work in no salon yet.");
                await PastReplayStore.AskAsync(db, current.Person, clock.GetCurrentInstant(), cancellation);
                return new Outcome(true);
            },
            cancellation
        );

    private bool MayAsk => current.Person.StaffRole == StaffRole.Owner || current.Person.Salons.Count > 0;

    /// <param name="Result">Of the whole practice; null where none was worked out yet.</param>
    /// <param name="Asked">Somebody wants it worked out now, and it is not done yet.</param>
    public sealed record Screen(PastReplayResult? Result, bool Asked, bool MayAsk);

    public sealed record Input;

    public sealed record Outcome(bool Asked);
}
