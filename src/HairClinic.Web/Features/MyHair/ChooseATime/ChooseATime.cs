using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Sql;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client books a time by themselves: what is offered to clients, on days near the day they are due.</summary>
public sealed class ChooseATime(ClinicDbFactory databases, SelfBookingSlots slots, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <param name="around">The day wished for; null takes the due day.</param>
    /// <param name="at">A start wished for.</param>
    public async Task<Screen?> OpenAsync(Guid? service, LocalDate? around, Instant? at, CancellationToken cancellation)
    {
        if (await slots.LoadBookingFactsAsync(cancellation) is not { } book)
            return null;
        var today = book.Salon.DayOf(clock.GetCurrentInstant());
        var day = LocalDate.Max(today, around ?? at?.InZone(book.Salon.TimeZone).Date ?? book.DueOn ?? today);
        var chosen = book.Services.FirstOrDefault(s => s.Id == service);
        var ring = chosen is not null && await slots.MustRingFirstAsync(book.CriteriaFor(chosen), day, cancellation);
        return new Screen(
            today,
            day,
            book.Salon.Name,
            book.Salon.Phone,
            [.. book.Services.Select(s => new Offer(s.Id, s.Name, s.Minutes))],
            chosen?.Id,
            chosen is null || ring ? [] : await slots.FindAsync(book.CriteriaFor(chosen), day, at, cancellation)
        )
        {
            Ring = ring,
        };
    }

    /// <exception cref="Refusal">The service is not offered, enough is booked already, or the salon wants a word first.</exception>
    public async Task<SelfBookingOutcome> SaveAsync(Input input, CancellationToken cancellation)
    {
        var book =
            await slots.LoadBookingFactsAsync(cancellation) ?? throw new Refusal("Your salon has not opened your page yet. Ask them.");
        var service =
            book.Services.FirstOrDefault(s => s.Id == input.Service)
            ?? throw new Refusal("This service is no longer offered. Choose another.");
        var wish = book.CriteriaFor(service);
        try
        {
            return await SlotSaveErrors.RetryOnDeadlockAsync(() =>
                writes.RunAsync(
                    input.Key,
                    nameof(ChooseATime),
                    input,
                    db => WriteAsync(db, wish, service, input, cancellation),
                    cancellation
                )
            );
        }
        catch (Exception e) when (SelfBookingSlots.IsSlotTakenError(e))
        {
            return await slots.AlternativesAsync(wish, input.At!.Value, cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, VisitTriggers.MostAhead))
        {
            await using var db = databases.Open();
            throw Enough(await AheadAsync(db, cancellation));
        }
    }

    private async Task<SelfBookingOutcome> WriteAsync(
        ClinicDb db,
        SelfBookingCriteria wish,
        ServiceKind service,
        Input input,
        CancellationToken cancellation
    )
    {
        // The database has the last word: many forms may be sent at once.
        if (await AheadAsync(db, cancellation) is >= SelfBookingRule.MostAhead and var ahead)
            throw Enough(ahead);
        var slot = await slots.RequireSlotAtAsync(wish, input.At!.Value, cancellation);
        var visit = new Visit(Guid.CreateVersion7(), current.Client.ClientId, wish.Salon.Id, service.Id);
        visit.PutAt(service, slot.StartsAt, slot.ChairId, slot.PersonId, wish.Salon, [.. service.Steps.Select(_ => Guid.CreateVersion7())]);
        db.Visits.Add(visit);
        return new SelfBookingOutcome(FreeStart.FromInstant(visit.StartsAt, wish.Salon.TimeZone).Local);
    }

    private Task<int> AheadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var (client, now) = (current.Client.ClientId, clock.GetCurrentInstant());
        return db.Visits.CountAsync(v => v.ClientId == client && v.State == VisitState.Booked && v.StartsAt > now, cancellation);
    }

    private static Refusal Enough(int ahead) => new("You have {0} visits booked already. To book more, please ring us.", ahead);

    /// <param name="Around">The day the times lie around.</param>
    /// <param name="Chosen">The service; null while none is chosen.</param>
    public sealed record Screen(
        LocalDate Today,
        LocalDate Around,
        string Salon,
        string? Phone,
        IReadOnlyList<Offer> Services,
        Guid? Chosen,
        IReadOnlyList<FreeStart> Slots
    )
    {
        /// <summary>The salon wants a word with them before this is booked.</summary>
        public bool Ring { get; init; }
    }

    public sealed record Offer(Guid Id, string Name, int Minutes);

    public sealed record Input
    {
        /// <summary>Made when the form was drawn.</summary>
        public Guid Key { get; set; }

        public Guid Service { get; set; }
        public Instant? At { get; set; }
    }
}

public sealed class ChooseATimeRules : AbstractValidator<ChooseATime.Input>
{
    public ChooseATimeRules()
    {
        RuleFor(x => x.Key).NotEmpty().WithMessage("Open this page anew and choose again.");
        RuleFor(x => x.At).NotNull().WithMessage("Choose a time.");
    }
}
