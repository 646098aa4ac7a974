namespace HairClinic.Web.Data.Books;

/// <summary>What is on a head, or came off it last, of those that were made there.</summary>
public static class LastBondQuery
{
    /// <summary>For use within a query; the first of them is it.</summary>
    public static IQueryable<Bond> OfClient(ClinicDb db, Guid clientId) =>
        db
            .Bonds.AsNoTracking()
            .Where(b => b.ClientId == clientId)
            .OrderByDescending(b => b.RemovedOn == null)
            .ThenByDescending(b => b.AppliedOn)
            .ThenByDescending(b => b.AppliedAt);
}
