using System.Security.Cryptography;
using System.Text;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>
/// Takes down that somebody wants a link. Nothing here looks whether the address is known: that is done later, behind the
/// screens, so that neither the answer nor its time tells.
/// </summary>
public sealed class LinkAskBook(IClock clock)
{
    /// <summary>Links asked for one address within an hour; what is beyond is forgotten.</summary>
    public const int PerHour = 5;

    private static readonly Duration Hour = Duration.FromHours(1);

    public async Task AskAsync(ClinicDb db, string email, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var address = email.Trim().ToLowerInvariant();
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(address));
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // One at a time for an address, or a burst would be counted before any of it is written.
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({BitConverter.ToInt64(hash)})", cancellation);
        var since = now - Hour;
        await db.LinkAsks.Where(a => a.At <= since).ExecuteDeleteAsync(cancellation);
        if (await db.LinkAsks.CountAsync(a => a.AddressHash == hash, cancellation) < PerHour)
        {
            db.LinkAsks.Add(new LinkAsk(Guid.CreateVersion7(), hash, now));
            db.WorkItems.Add(WorkItems.AnswerAsk(address, now));
            await db.SaveChangesAsync(cancellation);
        }
        await transaction.CommitAsync(cancellation);
    }
}
