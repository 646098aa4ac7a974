using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client calls off their own visit; its chair and hands are free at once.</summary>
public sealed class CallOffMyTime(ClinicDbFactory databases, SelfBookingSlots slots, WriteOnce writes, IClock clock)
{
    /// <returns>Null when there is no such visit of theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await slots.FindVisitAsync(db, visitId, cancellation) is not { } own)
            return null;
        var now = clock.GetCurrentInstant();
        return new Screen(visitId, own.Salon.DayOf(now), own.Slot.Local, own.Salon.Name, own.Salon.Phone, own.MayChange(now), own.MoveHours)
        {
            Version = own.Visit.Version,
        };
    }

    /// <returns>Null when there is no such visit of theirs.</returns>
    /// <exception cref="Refusal">It is too late to change it here.</exception>
    /// <exception cref="OvertakenException">It is not what the page shows any more.</exception>
    public async Task<Outcome?> SaveAsync(Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(
                input.Key,
                nameof(CallOffMyTime),
                input,
                async db =>
                {
                    var own = await slots.FindVisitAsync(db, input.Visit, cancellation) ?? throw new NotTheirsException();
                    WriteOnce.ExpectVersion(db, own.Visit, input.Version);
                    slots.RequireChangeable(own);
                    own.Visit.Cancel();
                    return new Outcome(own.Slot.Local);
                },
                cancellation
            );
        }
        catch (NotTheirsException)
        {
            return null;
        }
    }

    public sealed record Screen(Guid VisitId, LocalDate Today, LocalDateTime At, string Salon, string? Phone, bool MayChange, int MoveHours)
    {
        /// <summary>Of what is shown: a page that shows an older one calls nothing off.</summary>
        public uint Version { get; init; }
    }

    public sealed record Input
    {
        public Guid Key { get; set; }
        public Guid Visit { get; set; }
        public uint Version { get; set; }
    }

    public sealed record Outcome(LocalDateTime Was);
}
