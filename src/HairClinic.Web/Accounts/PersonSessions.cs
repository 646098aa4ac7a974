using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>The open sign-ins of a person.</summary>
public static class PersonSessions
{
    /// <summary>Ends them all once the context is saved: cookies and open screens answer to the security stamp.</summary>
    public static async Task EndAllAsync(ClinicDb db, Guid personId, Instant now, CancellationToken cancellation)
    {
        var user = await db.Users.SingleOrDefaultAsync(u => u.PracticeId == db.PracticeId && u.PersonId == personId, cancellation);
        if (user is null)
            return;
        // Those that are locked at a tablet too.
        var open = db.SignInSessions.Where(s => s.UserId == user.Id && s.EndedAt == null && s.ExpiresAt > now);
        foreach (var one in await open.ToListAsync(cancellation))
            one.End(SessionEnd.EndedByManager, now);
        user.SecurityStamp = Guid.NewGuid().ToString("N");
        user.ConcurrencyStamp = Guid.NewGuid().ToString();
    }
}
