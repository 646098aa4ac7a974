namespace HairClinic.Web.Data.Books;

/// <summary>The clearances of clients, for those who may not read the reason.</summary>
public static class ClearanceStore
{
    /// <summary>Those that hold on a day, one round trip.</summary>
    public static Task<List<Clearance>> LoadAsync(ClinicDb db, Guid clientId, LocalDate day, CancellationToken cancellation) =>
        db
            .Clearances.AsNoTracking()
            .Where(c => c.ClientId == clientId && c.From <= day && (c.Until == null || c.Until >= day))
            .ToListAsync(cancellation);

    /// <summary>Those about a service of that purpose on that day, of all clients the actor may open; for use within a query.</summary>
    public static IQueryable<Clearance> OfPurposeOnDay(ClinicDb db, ServicePurpose purpose, LocalDate day) =>
        db.Clearances.Where(c =>
            c.ProductId == null && (c.Purpose == null || c.Purpose == purpose) && c.From <= day && (c.Until == null || c.Until >= day)
        );

    /// <summary>Puts what the newest answers say in the place of what earlier ones of the same client said. The caller saves.</summary>
    public static async Task ReplaceAsync(
        ClinicDb db,
        Guid clientId,
        Guid healthAnswerId,
        IEnumerable<ClearanceSpec> facts,
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
