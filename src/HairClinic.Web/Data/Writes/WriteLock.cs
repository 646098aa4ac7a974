namespace HairClinic.Web.Data.Writes;

/// <summary>Runs writes about one subject one at a time, so that each sees what the one before wrote.</summary>
public static class WriteLock
{
    /// <summary>Begins a transaction and waits for the lock on this write and subject; it is released when the transaction ends.</summary>
    public static async Task LockAsync(ClinicDb db, string write, Guid subjectId, CancellationToken cancellation)
    {
        await db.Database.BeginTransactionAsync(cancellation);
        var name = $"{write} of {db.PracticeId} {subjectId}";
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtextextended({name}, 0))", cancellation);
    }

    /// <summary>Takes the practice's lock on a work unless another holds it, until the transaction ends: two programs on one database never both do it.</summary>
    /// <returns>Whether it was free.</returns>
    public static Task<bool> TryLockAsync(ClinicDb db, string work, CancellationToken cancellation)
    {
        var name = $"{work} {db.PracticeId}";
        return db
            .Database.SqlQuery<bool>($"select pg_try_advisory_xact_lock(hashtextextended({name}, 0)) as \"Value\"")
            .SingleAsync(cancellation);
    }
}
