using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>Other salons have asked to see clients of one's own: let in for a fortnight, or not.</summary>
public sealed class AnswerSalonRequests(ClinicDbFactory databases, WriteOnce writes, AccessLogStore log, CurrentActor current, IClock clock)
{
    /// <summary>How long a yes lasts; common practice, no source. It can be taken back or granted anew.</summary>
    public const int Days = 14;

    public async Task<IReadOnlyList<Row>> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await (
            from r in db.ClientRequests.AsNoTracking()
            where r.AnsweredAt == null
            join c in db.Clients on r.ClientId equals c.Id
            join s in db.Salons on r.SalonId equals s.Id
            join p in db.People on r.AskedBy equals p.Id
            orderby r.AskedAt descending
            select new Row(r.Id, c.Id, c.Name, c.Code, s.Name, p.Name, r.AskedAt, s.Zone, r.Because)
        )
            .Take(100)
            .ToListAsync(cancellation);
    }

    /// <exception cref="Refusal">Somebody answered already, or it is not the home salon that answers.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(AnswerSalonRequests),
            input,
            async db =>
            {
                var request =
                    await db.ClientRequests.SingleOrDefaultAsync(r => r.Id == input.RequestId, cancellation)
                    ?? throw new Refusal("This is not there any more.");
                var now = clock.GetCurrentInstant();
                request.AnswerAccessRequest(input.Yes, now);
                if (input.Yes)
                {
                    await db.Database.BeginTransactionAsync(cancellation);
                    await log.NoteAsync(db, AccessAction.GrantedSalon, request.ClientId, request.SalonId, cancellation: cancellation);
                    var end = now + Duration.FromDays(Days);
                    db.ClientGrants.Add(
                        new ClientGrant(key, request.ClientId, request.SalonId, now, end, current.Person.PersonId, request.Because)
                    );
                }
                return new Outcome(input.Yes);
            },
            cancellation
        );

    public sealed record Row(
        Guid RequestId,
        Guid ClientId,
        string Client,
        string Code,
        string Salon,
        string By,
        Instant At,
        string Zone,
        string Because
    );

    public sealed record Input(Guid RequestId, bool Yes);

    public sealed record Outcome(bool Granted);
}
