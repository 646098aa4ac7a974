using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>A client's home moves to another salon; the old one may still see them until a day it names.</summary>
public sealed class TransferClient(ClinicDbFactory databases, WriteOnce writes, AccessLogStore log, CurrentActor current, IClock clock)
{
    /// <returns>Null: not there, or not of a salon of theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db
            .Clients.AsNoTracking()
            .UnmergedById(clientId)
            .AtHomeInSalonsOf(current.Person)
            .SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        var salons = await db.Salons.AsNoTracking().Where(s => !s.Retired || s.Id == client.HomeSalonId).ToListAsync(cancellation);
        var home = salons.Single(s => s.Id == client.HomeSalonId);
        return new Screen(
            client.Name,
            client.Code,
            home.Name,
            [.. salons.Where(s => s != home).OrderBy(s => s.Name).Select(s => new SalonOffered(s.Id, s.Name))],
            new Input
            {
                ClientId = clientId,
                Version = client.Version,
                KeepUntil = home.DayOf(clock.GetCurrentInstant()).PlusDays(30),
            }
        );
    }

    /// <exception cref="Refusal">The client or the salon is not there, or not theirs to move.</exception>
    /// <exception cref="OvertakenException">Someone else saved this client since the form opened.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(TransferClient),
            input,
            async db =>
            {
                var client =
                    await db.Clients.UnmergedById(input.ClientId).AtHomeInSalonsOf(current.Person).SingleOrDefaultAsync(cancellation)
                    ?? throw new Refusal("This client is not there any more. They may have been merged with another record.");
                WriteOnce.ExpectVersion(db, client, input.Version);
                var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
                if (!salons.TryGetValue(input.SalonId!.Value, out var to) || to.Retired || to.Id == client.HomeSalonId)
                    throw new Refusal("This salon is not there any more.");
                var now = clock.GetCurrentInstant();
                var from = salons[client.HomeSalonId];
                await db.Database.BeginTransactionAsync(cancellation);
                await log.NoteAsync(db, AccessAction.Transferred, client.Id, to.Id, cancellation: cancellation);
                if (input.KeepUntil is { } until && until >= from.DayOf(now))
                {
                    await log.NoteAsync(db, AccessAction.GrantedSalon, client.Id, from.Id, cancellation: cancellation);
                    var end = from.TimeZone.AtStartOfDay(until.PlusDays(1)).ToInstant();
                    db.ClientGrants.Add(new ClientGrant(key, client.Id, from.Id, now, end, current.Person.PersonId, "Transferred"));
                }
                client.MoveTo(to.Id);
                db.WorkItems.Add(WorkItemFactory.RefreshDueDates(client.Id, now));
                return new Outcome(to.Name);
            },
            cancellation
        );

    public sealed record Screen(string Name, string Code, string Home, IReadOnlyList<SalonOffered> Others, Input Begin);

    public sealed record SalonOffered(Guid Id, string Name);

    public sealed record Input
    {
        public Guid ClientId { get; set; }

        /// <summary>The row's when the form opened.</summary>
        public uint Version { get; set; }

        public Guid? SalonId { get; set; }

        /// <summary>Last day the old salon sees them; empty for not at all.</summary>
        public LocalDate? KeepUntil { get; set; }
    }

    public sealed record Outcome(string Salon);
}
