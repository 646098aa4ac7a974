using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>The practice's shared tablets: which there are, when each was last used, and an end to one that is lost.</summary>
public sealed class Tablets(ClinicDbFactory databases, SessionStore sessions, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var zone = await db.Salons.Where(s => s.Id == current.Person.AtSalon).Select(s => s.Zone).SingleOrDefaultAsync(cancellation);
        var rows = await db
            .Tablets.AsNoTracking()
            .Where(t => t.EndedAt == null)
            .OrderBy(t => t.Name)
            .ThenBy(t => t.Id)
            .Select(t => new Row(t.Id, t.Name, t.LockAfterMinutes, t.MadeAt, t.LastUsedAt))
            .ToListAsync(cancellation);
        return new Screen(rows, DateTimeZoneProviders.Tzdb[zone ?? "Etc/UTC"]);
    }

    /// <summary>It is a browser like any other from now on: everybody is out, their PINs there open nothing.</summary>
    /// <returns>Whether there was such a tablet here.</returns>
    public async Task<bool> DeregisterAsync(Guid tabletId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await db.Tablets.SingleOrDefaultAsync(t => t.Id == tabletId, cancellation) is not { } tablet)
            return false;
        tablet.End(clock.GetCurrentInstant());
        await db.SaveChangesAsync(cancellation);
        await sessions.EndAllAtTabletAsync(tablet.PracticeId, tablet.Id, cancellation);
        return true;
    }

    public sealed record Screen(IReadOnlyList<Row> Rows, DateTimeZone Zone);

    public sealed record Row(Guid Id, string Name, int LockAfterMinutes, Instant MadeAt, Instant? LastUsedAt);
}
