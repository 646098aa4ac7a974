using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>Whose pages an e-mail address opens: that of the client who has it, and those of whom its reader looks after.</summary>
public static class OwnPages
{
    /// <summary>Two round trips, as a job: a client's own fence shows no one else.</summary>
    public static async Task<IReadOnlyList<OwnPage>> OfAsync(ClinicDb db, string email, Instant now, CancellationToken cancellation)
    {
        var address = email.Trim().ToLowerInvariant();
        var word = FindWords.Normal(address);
        var own = await (
            from w in db.FindWords
            join client in db.Clients on w.SubjectId equals client.Id
            where w.Word == word && w.Kind == FindKind.ClientEmail && client.MergedIntoId == null && client.LeftOn == null
            select client
        )
            .AsNoTracking()
            .Distinct()
            .ToListAsync(cancellation);
        var wards = await (
            from guardian in db.Guardians
            join client in db.Clients on guardian.ClientId equals client.Id
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            where guardian.Email == address && client.MergedIntoId == null && client.LeftOn == null
            select new
            {
                Client = client,
                guardian.EndsOn,
                salon.Zone,
            }
        )
            .AsNoTracking()
            .ToListAsync(cancellation);
        return
        [
            .. own.Where(c => string.Equals(c.Email, address, StringComparison.OrdinalIgnoreCase))
                .Concat(wards.Where(w => w.EndsOn is null || w.EndsOn >= Today(w.Zone)).Select(w => w.Client))
                .DistinctBy(c => c.Id)
                .Select(c => new OwnPage(c.Id, c.CalledAs ?? c.Name)),
        ];

        LocalDate Today(string zone) => now.InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
    }
}
