using HairClinic.Web.Data;

namespace HairClinic.Web.Accounts;

/// <summary>Whose pages an e-mail address opens, and how far: that of the client who has it, and those of whom its reader looks after.</summary>
public static class OwnPageLookup
{
    /// <summary>One round trip, as a job: a client's own fence shows no one else.</summary>
    public static async Task<IReadOnlyList<OwnPage>> ByEmailAsync(ClinicDb db, string email, Instant now, CancellationToken cancellation)
    {
        var address = email.Trim().ToLowerInvariant();
        var found = await (
            from opening in db.OpeningAddresses
            where opening.Email == address && opening.EndedAt == null
            join client in db.Clients on opening.ClientId equals client.Id
            where
                client.MergedIntoId == null
                && (client.LeftOn == null || client.NeedEndedBecause == NeedEnd.TryingWithout)
                && client.ErasedAt == null
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            join guardian in db.Guardians on opening.GuardianId equals (Guid?)guardian.Id into guardians
            from guardian in guardians.DefaultIfEmpty()
            select new
            {
                Opening = opening,
                Name = client.CalledAs ?? client.Name,
                EndsOn = guardian == null ? null : guardian.EndsOn,
                salon.Zone,
            }
        )
            .AsNoTracking()
            .ToListAsync(cancellation);
        return
        [
            .. found
                .Select(f => (f.Opening, f.Name, Opens: f.Opening.AccessOn(Today(f.Zone), f.EndsOn)))
                .Where(f => f.Opens != ClientPageAccessLevel.Nothing)
                // Their own page first.
                .OrderBy(f => f.Opening.GuardianId is not null)
                .GroupBy(f => f.Opening.ClientId)
                .Select(g => new OwnPage(g.Key, g.First().Name, g.Any(f => f.Opens == ClientPageAccessLevel.Everything))),
        ];

        LocalDate Today(string zone) => now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
    }
}

/// <summary>A client whose page somebody may open.</summary>
/// <param name="OpensAll">Whether the address is confirmed; else it opens their dates only.</param>
public sealed record OwnPage(Guid ClientId, string Name, bool OpensAll);
