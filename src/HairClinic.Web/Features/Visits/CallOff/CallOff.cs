using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Visits;

/// <summary>A visit is called off, by the client or by the salon; its chair and hands are free at once.</summary>
public sealed class CallOff(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IStringLocalizer<Words> words)
{
    /// <returns>Nothing when there is no such visit in the person's salons.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .Visits.Where(v => v.Id == visitId && current.Person.Salons.Contains(v.SalonId))
            .Select(v => new Screen(
                v.Id,
                v.Version,
                v.State,
                v.ClientId,
                db.Clients.First(c => c.Id == v.ClientId).Name,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Name,
                v.Day,
                v.StartsAt,
                db.Salons.First(s => s.Id == v.SalonId).Zone
            ))
            .SingleOrDefaultAsync(cancellation);
    }

    /// <exception cref="Refusal">It is over or called off already.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit since the form opened.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(CallOff),
            input,
            async db =>
            {
                var visit =
                    await db
                        .Visits.Include(v => v.Segments)
                        .SingleOrDefaultAsync(v => v.Id == input.VisitId && current.Person.Salons.Contains(v.SalonId), cancellation)
                    ?? throw new Refusal("This visit is not in the book.");
                WriteOnce.ExpectVersion(db, visit, input.Version);
                visit.Cancel();
                visit.SetNote(Noted(visit.Note, input));
                return new Outcome(visit.Id, visit.ClientId, visit.Day);
            },
            cancellation
        );

    private string Noted(string? note, Input input)
    {
        string line = input.By == CalledOffBy.Client ? words["Called off by the client."] : words["Called off by the salon."];
        if (!string.IsNullOrWhiteSpace(input.Reason))
            line += " " + input.Reason.Trim();
        return note.WithLine(line);
    }

    public sealed record Screen(
        Guid VisitId,
        uint Version,
        VisitState State,
        Guid ClientId,
        string Client,
        string Service,
        LocalDate Day,
        Instant StartsAt,
        string Zone
    )
    {
        public bool IsOpen => State is VisitState.Booked or VisitState.Arrived;
    }

    public sealed record Input
    {
        public Guid VisitId { get; set; }
        public uint Version { get; set; }
        public CalledOffBy? By { get; set; }
        public string? Reason { get; set; }
    }

    public sealed record Outcome(Guid VisitId, Guid ClientId, LocalDate Day);
}

public enum CalledOffBy
{
    Client,
    Salon,
}
