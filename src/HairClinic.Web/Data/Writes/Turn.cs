namespace HairClinic.Web.Data.Writes;

/// <summary>One at a time: what must see what the one before wrote.</summary>
public static class Turn
{
    /// <summary>Waits until nobody else does the same about the same subject; it lasts until the transaction that was begun ends.</summary>
    public static async Task LockAsync(ClinicDb db, string write, Guid subjectId, CancellationToken cancellation)
    {
        await db.Database.BeginTransactionAsync(cancellation);
        var name = $"{write} of {db.PracticeId} {subjectId}";
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtextextended({name}, 0))", cancellation);
    }
}
