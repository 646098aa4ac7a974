using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Wear;

/// <summary>What the desk did about someone on the due list: rang, wrote, offered, or put off to a day.</summary>
public sealed class NoteContact(WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <summary>Longer than any hold window: whoever does not come for that long has left, and that is said elsewhere.</summary>
    private const int LongestPutOffWeeks = 26;

    /// <exception cref="Refusal">Not a client of the person's salons, a put-off to a day that is past or far off, or of a lifted bond.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        await writes.RunAsync(key, nameof(NoteContact), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var (person, now) = (current.Person, clock.GetCurrentInstant());
        var client = await (
            from c in db.Clients.AsNoTracking()
            join s in db.Salons on c.HomeSalonId equals s.Id
            where c.Id == input.ClientId && person.Salons.Contains(c.HomeSalonId)
            select new { s.Zone, Lifted = db.Bonds.Any(b => b.ClientId == c.Id && b.RemovedOn == null && b.Lift != null) }
        ).SingleOrDefaultAsync(cancellation);
        if (client is null)
            throw new Refusal("This client is not in the book.");
        var putOff = input.Kind == ContactOutcome.PutOff;
        if (putOff)
            CheckPutOff(input.Until, now.InZone(DateTimeZoneProviders.Tzdb[client.Zone]).Date, client.Lifted);
        var note = new ContactNote(
            Guid.CreateVersion7(),
            input.ClientId,
            input.Kind,
            now,
            person.PersonId,
            putOff ? input.Until : null,
            putOff ? input.Reason : null
        );
        db.ContactNotes.Add(note);
        return new Outcome(note.Kind, note.At, note.Until, note.Reason);
    }

    private static void CheckPutOff(LocalDate? until, LocalDate today, bool lifted)
    {
        if (lifted)
            throw new Refusal("Their bond has lifted: book them instead of putting them off.");
        if (until <= today)
            throw new Refusal("Put off to a day after today.");
        if (until > today.PlusWeeks(LongestPutOffWeeks))
            throw new Refusal("Put off by {0} weeks at most.", LongestPutOffWeeks);
    }

    public sealed record Input
    {
        public Guid ClientId { get; init; }
        public ContactOutcome Kind { get; init; }
        public LocalDate? Until { get; set; }
        public string Reason { get; set; } = "";
    }

    public sealed record Outcome(ContactOutcome Kind, Instant At, LocalDate? Until, string? Reason);
}
