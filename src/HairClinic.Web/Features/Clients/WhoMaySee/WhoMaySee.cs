using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>Which salons may open a client's record and until when; the home salon lets another in by name and date, and takes it back.</summary>
public sealed class WhoMaySee(ClinicDbFactory databases, WriteOnce writes, AccessLogStore log, CurrentActor current, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await (
            from c in db.Clients.AsNoTracking().UnmergedById(clientId)
            join home in db.Salons on c.HomeSalonId equals home.Id
            select new
            {
                c.Name,
                c.Code,
                Home = home,
            }
        ).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        var now = clock.GetCurrentInstant();
        var grants = await (
            from g in db.ClientGrants.AsNoTracking()
            where g.ClientId == clientId && g.Reason != GrantReason.Home && g.EndsAt > now
            join s in db.Salons on g.SalonId equals s.Id into salons
            from salon in salons.DefaultIfEmpty()
            join p in db.People on g.PersonId equals p.Id into people
            from person in people.DefaultIfEmpty()
            join b in db.People on g.GivenBy equals b.Id into givers
            from giver in givers.DefaultIfEmpty()
            orderby g.EndsAt
            select new
            {
                g.Id,
                Who = salon != null ? salon.Name : person!.Name,
                g.Reason,
                g.EndsAt,
                By = giver != null ? giver.Name : null,
                g.Note,
            }
        ).ToListAsync(cancellation);
        var others = await db
            .Salons.AsNoTracking()
            .Where(s => !s.Retired && s.Id != client.Home.Id)
            .OrderBy(s => s.Name)
            .Select(s => new SalonOffered(s.Id, s.Name))
            .ToListAsync(cancellation);
        return new Screen(
            client.Name,
            client.Code,
            client.Home.Name,
            client.Home.DayOf(now),
            [
                .. grants.Select(g => new Line(
                    g.Id,
                    g.Who,
                    g.Reason,
                    g.EndsAt!.Value.Minus(Duration.Epsilon).InZone(client.Home.TimeZone).Date,
                    g.By,
                    g.Note
                )),
            ],
            others,
            StaffPermissions.MayManageClient(current.Person, client.Home.Id)
        );
    }

    /// <exception cref="Refusal">The day is past, no reason is said, or it is not the home salon that asks.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(WhoMaySee),
            input,
            async db =>
            {
                var salon =
                    await db.Salons.AsNoTracking().SingleOrDefaultAsync(s => s.Id == input.SalonId && !s.Retired, cancellation)
                    ?? throw new Refusal("This salon is not there any more.");
                var until = salon.TimeZone.AtStartOfDay(input.Until!.Value.PlusDays(1)).ToInstant();
                await db.Database.BeginTransactionAsync(cancellation);
                await log.NoteAsync(db, AccessAction.GrantedSalon, input.ClientId, salon.Id, cancellation: cancellation);
                db.ClientGrants.Add(
                    new ClientGrant(key, input.ClientId, salon.Id, clock.GetCurrentInstant(), until, current.Person.PersonId, input.Because)
                );
                return new Outcome(salon.Name, input.Until.Value);
            },
            cancellation
        );

    /// <exception cref="Refusal">It belongs to a visit, or is not theirs.</exception>
    public Task<Outcome> TakeBackAsync(Guid key, Taken input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(TakeBackAsync),
            input,
            async db =>
            {
                var grant =
                    await db.ClientGrants.SingleOrDefaultAsync(g => g.Id == input.GrantId && g.ClientId == input.ClientId, cancellation)
                    ?? throw new Refusal("This is not there any more.");
                var now = clock.GetCurrentInstant();
                grant.TakeBack(now);
                await db.Database.BeginTransactionAsync(cancellation);
                await log.NoteAsync(db, AccessAction.EndedGrant, grant.ClientId, grant.SalonId, cancellation: cancellation);
                return new Outcome("", now.InUtc().Date);
            },
            cancellation
        );

    /// <param name="MayGrant">Only people of the home salon, and owners.</param>
    public sealed record Screen(
        string Name,
        string Code,
        string Home,
        LocalDate Today,
        IReadOnlyList<Line> Lines,
        IReadOnlyList<SalonOffered> Others,
        bool MayGrant
    );

    /// <param name="Until">Last day, on the home salon's calendar.</param>
    public sealed record Line(Guid GrantId, string Who, GrantReason Reason, LocalDate Until, string? By, string? Note);

    public sealed record SalonOffered(Guid Id, string Name);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public Guid? SalonId { get; set; }

        /// <summary>Last day, on the calendar of the salon that is let in.</summary>
        public LocalDate? Until { get; set; }

        public string Because { get; set; } = "";
    }

    public sealed record Taken(Guid ClientId, Guid GrantId);

    public sealed record Outcome(string Salon, LocalDate Until);
}
