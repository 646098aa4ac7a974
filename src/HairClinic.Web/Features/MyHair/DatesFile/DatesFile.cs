using System.Buffers.Text;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client's dates for their own calendar. Nothing in it says what they are for.</summary>
public sealed class DatesFile(
    ClinicDbFactory databases,
    PracticeJobRunner jobs,
    CurrentActor current,
    MailSettings mail,
    IClock clock,
    IStringLocalizer<Words> words
)
{
    private const int PracticeBytes = 16;

    // A calendar that follows keeps what was, for a while.
    private static readonly Duration Kept = Duration.FromDays(90);

    public async Task<string?> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await WriteAsync(db, current.Client.ClientId, cancellation);
    }

    /// <summary>For a calendar that follows by its secret address.</summary>
    /// <returns>Null when the address is made up or was stopped, or whoever made it may not open the client's page any more.</returns>
    public async Task<string?> OpenFeedAsync(string address, CancellationToken cancellation)
    {
        if (!Base64Url.IsValid(address))
            return null;
        var key = Base64Url.DecodeFromChars(address);
        if (key.Length <= PracticeBytes)
            return null;
        var hash = SHA256.HashData(key.AsSpan(PracticeBytes));
        return await jobs.RunJobAsync(
            new Guid(key.AsSpan(0, PracticeBytes)),
            "calendar",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var feed = await db
                    .CalendarFeeds.AsNoTracking()
                    .SingleOrDefaultAsync(f => f.SecretHash == hash && f.EndedAt == null, cancellation);
                if (feed is null)
                    return null;
                var pages = await OwnPageLookup.ByEmailAsync(db, feed.Email, clock.GetCurrentInstant(), cancellation);
                return pages.Any(p => p.ClientId == feed.ClientId) ? await WriteAsync(db, feed.ClientId, cancellation) : null;
            }
        );
    }

    private async Task<string?> WriteAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var since = now - Kept;
        var own = await db
            .Clients.AsNoTracking()
            .Where(c => c.Id == clientId && c.MergedIntoId == null && (c.LeftOn == null || c.NeedEndedBecause == NeedEnd.TryingWithout))
            .Select(c => new
            {
                Due = db.Bonds.Where(b => b.ClientId == c.Id && b.RemovedOn == null).Select(b => new { b.Id, b.DueOn }).FirstOrDefault(),
                Visits = (
                    from visit in db.Visits
                    join salon in db.Salons on visit.SalonId equals salon.Id
                    where visit.ClientId == c.Id && visit.StartsAt > since && visit.State != VisitState.Cancelled
                    orderby visit.StartsAt
                    select new CalendarVisit(visit.Id, visit.StartsAt, visit.EndsAt, salon.Zone, salon.Address)
                ).ToList(),
            })
            .SingleOrDefaultAsync(cancellation);
        if (own is null)
            return null;
        var booked = own.Visits.Exists(v => v.StartsAt > now);
        var due = own.Due is null || booked ? null : new CalendarDueDay(own.Due.Id, own.Due.DueOn);
        return CalendarFileWriter.Write(own.Visits, due, words["Appointment"], words["To book"], (mail.FromName, mail.From), now);
    }
}
