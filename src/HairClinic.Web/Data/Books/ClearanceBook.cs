using HairClinic.Domain.Clients;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>What of a client must be asked about first, for those who may not read why.</summary>
public static class ClearanceBook
{
    /// <summary>Those that hold on a day, one round trip.</summary>
    public static Task<List<Clearance>> OfAsync(ClinicDb db, Guid clientId, LocalDate day, CancellationToken cancellation) =>
        db
            .Clearances.AsNoTracking()
            .Where(c => c.ClientId == clientId && c.From <= day && (c.Until == null || c.Until >= day))
            .ToListAsync(cancellation);

    /// <summary>Puts what the newest answers say in the place of what earlier ones of the same client said. The caller saves.</summary>
    public static async Task ReplaceAsync(
        ClinicDb db,
        Guid clientId,
        Guid healthAnswerId,
        IEnumerable<ClearanceFact> facts,
        CancellationToken cancellation
    )
    {
        // What came over from a merged record was written from that record's answers, and stays.
        await db
            .Clearances.Where(c => c.ClientId == clientId && db.HealthAnswers.Any(a => a.Id == c.HealthAnswerId && a.ClientId == clientId))
            .ExecuteDeleteAsync(cancellation);
        db.Clearances.AddRange(facts.Select(f => new Clearance(Guid.CreateVersion7(), clientId, healthAnswerId, f)));
    }
}
