using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Data.Accounts;

/// <summary>The open sign-ins of a person.</summary>
public static class Sessions
{
    /// <summary>Ends them all once the context is saved: cookies and open screens answer to the security stamp.</summary>
    public static async Task EndAsync(ClinicDb db, Guid personId, CancellationToken cancellation)
    {
        var user = await db.Users.SingleOrDefaultAsync(u => u.PracticeId == db.PracticeId && u.PersonId == personId, cancellation);
        if (user is null)
            return;
        user.SecurityStamp = Guid.NewGuid().ToString("N");
        user.ConcurrencyStamp = Guid.NewGuid().ToString();
    }
}
