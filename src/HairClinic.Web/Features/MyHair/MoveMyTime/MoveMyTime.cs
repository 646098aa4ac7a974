using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client moves their own visit to another free time; what it is for and how long it takes stays.</summary>
public sealed class MoveMyTime(ClinicDbFactory databases, SelfBookingSlots slots, WriteOnce writes, IClock clock)
{
    /// <returns>Null when there is no such visit of theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, LocalDate? around, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await slots.FindVisitAsync(db, visitId, cancellation) is not { } own)
            return null;
        var now = clock.GetCurrentInstant();
        var today = own.Salon.DayOf(now);
        var day = LocalDate.Max(today, around ?? own.Slot.Local.Date);
        var ring = await slots.MustRingFirstAsync(own.Wish, day, cancellation);
        var free = own.MayChange(now) && !ring ? await slots.FindAsync(own.Wish, day, at: null, cancellation) : [];
        return new Screen(visitId, today, day, own.Slot.Local, own.Salon.Name, own.Salon.Phone, own.MayChange(now), own.MoveHours, free)
        {
            Version = own.Visit.Version,
            Ring = ring,
        };
    }

    /// <returns>Null when there is no such visit of theirs.</returns>
    /// <exception cref="Refusal">It is too late to change it here, or the salon wants a word first.</exception>
    /// <exception cref="OvertakenException">It is not what the page shows any more.</exception>
    public async Task<SelfBookingOutcome?> SaveAsync(Input input, CancellationToken cancellation)
    {
        OwnVisit? own = null;
        try
        {
            return await SlotSaveErrors.RetryOnDeadlockAsync(() =>
                writes.RunAsync(
                    input.Key,
                    nameof(MoveMyTime),
                    input,
                    async db =>
                    {
                        own = await slots.FindVisitAsync(db, input.Visit, cancellation) ?? throw new NotTheirsException();
                        WriteOnce.ExpectVersion(db, own.Visit, input.Version);
                        return await MoveAsync(db, own, input.At!.Value, cancellation);
                    },
                    cancellation
                )
            );
        }
        catch (NotTheirsException)
        {
            return null;
        }
        catch (Exception e) when (own is not null && SelfBookingSlots.IsSlotTakenError(e))
        {
            return await slots.AlternativesAsync(own.Wish, input.At!.Value, cancellation);
        }
    }

    private async Task<SelfBookingOutcome> MoveAsync(ClinicDb db, OwnVisit own, Instant at, CancellationToken cancellation)
    {
        slots.RequireChangeable(own);
        var slot = await slots.RequireSlotAtAsync(own.Wish, at, cancellation);
        var steps = own.Steps;
        own.Visit.PutAt(steps, slot.StartsAt, slot.ChairId, slot.PersonId, own.Salon, [.. steps.Select(_ => Guid.CreateVersion7())]);
        db.AddRange(own.Visit.Segments);
        return new SelfBookingOutcome(FreeStart.FromInstant(slot.StartsAt, own.Salon.TimeZone).Local);
    }

    public sealed record Screen(
        Guid VisitId,
        LocalDate Today,
        LocalDate Around,
        LocalDateTime Now,
        string Salon,
        string? Phone,
        bool MayChange,
        int MoveHours,
        IReadOnlyList<FreeStart> Slots
    )
    {
        /// <summary>Of what is shown: a move sent from an older page changes nothing.</summary>
        public uint Version { get; init; }

        /// <summary>The salon wants a word with them before this is moved.</summary>
        public bool Ring { get; init; }
    }

    public sealed record Input
    {
        public Guid Key { get; set; }
        public Guid Visit { get; set; }
        public uint Version { get; set; }
        public Instant? At { get; set; }
    }
}

public sealed class MoveMyTimeRules : AbstractValidator<MoveMyTime.Input>
{
    public MoveMyTimeRules()
    {
        RuleFor(x => x.Key).NotEmpty().WithMessage("Open this page anew and choose again.");
        RuleFor(x => x.At).NotNull().WithMessage("Choose a time.");
    }
}
