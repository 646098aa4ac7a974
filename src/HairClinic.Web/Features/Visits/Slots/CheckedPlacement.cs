using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Visits;

/// <summary>Where a visit is to go, checked against the book: what is impossible is refused, what is odd is a doubt.</summary>
internal sealed record CheckedPlacement(
    Salon Salon,
    ServiceKind Service,
    Instant StartsAt,
    Instant EndsAt,
    string Chair,
    string Person,
    IReadOnlyList<Doubt> Doubts
)
{
    /// <summary>Two round trips.</summary>
    /// <param name="minutes">From start to end; null takes the service's own.</param>
    /// <exception cref="Refusal">
    /// The clocks skip that time, or salon, service, chair or person are not to be had, or the service is blocked for the client.
    /// </exception>
    public static async Task<CheckedPlacement> CheckAsync(
        ClinicDb db,
        Guid salonId,
        Guid serviceKindId,
        Guid clientId,
        PlacementInput choice,
        int? minutes,
        PersonActor who,
        Instant now,
        CancellationToken cancellation
    )
    {
        var book =
            await db
                .Salons.AsNoTracking()
                .Where(s => s.Id == salonId)
                .Include(s => s.Hours)
                .Include(s => s.Closures)
                .SelectMany(
                    s => db.ServiceKinds.Where(k => k.Id == serviceKindId).Include(k => k.Steps),
                    (s, k) => new { Salon = s, Service = k }
                )
                .SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This service is no longer offered. Choose another.");
        var salon = book.Salon;
        var start = StartOf(choice, salon.TimeZone);
        var end = start + Duration.FromMinutes(minutes ?? book.Service.Minutes);
        var (from, to) = (start.InZone(salon.TimeZone), end.InZone(salon.TimeZone));
        var (day, weekday, begins, ends) = (from.Date, from.DayOfWeek, from.TimeOfDay, to.TimeOfDay);
        var clearances = ClearanceStore.OfPurposeOnDay(db, book.Service.Purpose, day);
        var bonds = LastBondQuery.OfClient(db, clientId);
        var facts = await db
            .Salons.Where(s => s.Id == salonId)
            .Select(s => new
            {
                Chair = db
                    .Chairs.Where(c => c.Id == choice.ChairId && c.SalonId == s.Id && !c.Retired)
                    .Select(c => c.Name)
                    .FirstOrDefault(),
                Person = db
                    .People.Where(p => p.Id == choice.PersonId && !p.Left && p.Salons.Any(w => w.SalonId == s.Id))
                    .Select(p => new
                    {
                        p.Name,
                        Alone = p.Skills.Any(k => k.ServiceKindId == serviceKindId),
                        AtWork = !p.Absences.Any(a => a.From <= day && a.To >= day)
                            && (
                                !p.WorkSpells.Any()
                                || p.WorkSpells.Any(w => w.SalonId == s.Id && w.Day == weekday && w.From <= begins && w.To >= ends)
                            ),
                    })
                    .FirstOrDefault(),
                Clearances = clearances.Where(c => c.ClientId == clientId).Select(c => c.Kind).ToList(),
                LastBond = bonds.FirstOrDefault(),
                Events = db.LifeEvents.Where(e => e.ClientId == clientId).ToList(),
                DaysBeforeEvent = db.PracticeSettings.Select(p => p.DaysBeforeEvent).First(),
            })
            .SingleAsync(cancellation);
        if (facts.Chair is null)
            throw new Refusal("This chair is no longer used. Choose another.");
        if (facts.Person is null)
            throw new Refusal("This person does not work in {0}. Choose somebody else.", salon.Name);

        var doubts = new List<Doubt>();
        if (start < now)
            doubts.Add(Doubt.Past);
        if (!SlotFacts.OpeningHoursOf(salon).Between(start, end).Any(open => open.Start <= start && open.End >= end))
            doubts.Add(Doubt.OutsideOpeningHours);
        else if (!facts.Person.AtWork)
            doubts.Add(Doubt.PersonNotAtWork);
        if (!facts.Person.Alone)
            doubts.Add(Doubt.PersonNotAlone);
        if (VisitLogRoutes.IsBondingPurpose(book.Service.Purpose) && facts.LastBond?.AsksToWaitOn(day) == true)
            doubts.Add(Doubt.NoBondYet);
        var pause = BondingPause.On(facts.Events, book.Service.Purpose, day, facts.DaysBeforeEvent);
        doubts.AddRange(ClearanceGate.CheckBooking(facts.Clearances, pause, who));
        return new(salon, book.Service, start, end, facts.Chair, facts.Person.Name, doubts);
    }

    /// <summary>What is kept with a visit that is booked all the same, under what is noted anyway.</summary>
    public string? NoteWithDoubts(string? note, IStringLocalizer words)
    {
        if (Doubts.Count == 0)
            return note;
        var agreed = $"{words["Agreed all the same:"]} {string.Join(' ', Doubts.Select(doubt => words.Word(doubt)))}";
        return note.WithLine(agreed);
    }

    // Where the clocks repeat an hour, the first is meant.
    private static Instant StartOf(PlacementInput choice, DateTimeZone zone)
    {
        if (choice.StartsAt is { } slot)
            return slot;
        var mapping = zone.MapLocal(choice.Day!.Value + choice.Time!.Value);
        return mapping.Count > 0
            ? mapping.First().ToInstant()
            : throw new Refusal("The clocks go forward that night and skip this time. Choose another.");
    }
}

/// <summary>What speaks against a time somebody typed. It warns; a second tap books all the same.</summary>
public enum Doubt
{
    Past,
    OutsideOpeningHours,
    PersonNotAtWork,
    PersonNotAlone,

    /// <summary>When the last bond came off it was said that the head is not bonded before a later day.</summary>
    NoBondYet,

    /// <summary>A clearance blocks this kind of service for the client; why is not for the desk.</summary>
    AskStylistFirst,
}

/// <summary>Where and when a visit is wanted: a slot that was offered, or a day and a time on the salon's clock.</summary>
public record PlacementInput
{
    public Guid ChairId { get; set; }
    public Guid PersonId { get; set; }

    /// <summary>The start of an offered slot; it goes before day and time.</summary>
    public Instant? StartsAt { get; set; }

    public LocalDate? Day { get; set; }
    public LocalTime? Time { get; set; }

    /// <summary>Whoever books was shown the doubts and means it.</summary>
    public bool DespiteDoubts { get; set; }
}

/// <summary>A chair or a person to choose.</summary>
public sealed record Choice(Guid Id, string Name);

/// <summary>Nothing was saved: somebody should look at the doubts first. Known as invalid so that a repeated submission still gets its first answer.</summary>
internal sealed class DoubtedException(IReadOnlyList<Doubt> doubts) : InvalidOperationException("There are doubts about this time.")
{
    public IReadOnlyList<Doubt> Doubts { get; } = doubts;
}

/// <summary>It was not free: what is taken, and the free slots nearest to it.</summary>
public sealed record BookingConflict(SlotClash By, IReadOnlyList<SlotOffer> Nearest)
{
    /// <summary>Where it was the client who is taken, in words.</summary>
    public Refusal? Client { get; init; }
}
