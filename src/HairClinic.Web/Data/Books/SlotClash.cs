using HairClinic.Web.Data.Maps;

namespace HairClinic.Web.Data.Books;

/// <summary>What is taken already.</summary>
public enum SlotClash
{
    Chair,
    Hands,

    /// <summary>The client has another visit then.</summary>
    Client,
}

/// <summary>Reads from a failed save whether a chair, a person or the client was taken already.</summary>
public static class SlotSaveErrors
{
    private const int Attempts = 5;

    public static SlotClash? FindClash(Exception failed) =>
        Cause(failed)?.ConstraintName switch
        {
            VisitMap.ClientOnce => SlotClash.Client,
            VisitSegmentMap.ChairOnce => SlotClash.Chair,
            VisitSegmentMap.HandsOnce => SlotClash.Hands,
            _ => null,
        };

    /// <summary>
    /// Saves that occupy slots take turns (<see cref="Sql.VisitTriggers"/>). In a deadlock all the same (one had changed a row the
    /// other wants) PostgreSQL cancels one of the two: it tries again.
    /// </summary>
    public static async Task<T> RetryOnDeadlockAsync<T>(Func<Task<T>> write)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await write();
            }
            catch (Exception e) when (attempt < Attempts && Cause(e)?.SqlState == PostgresErrorCodes.DeadlockDetected)
            {
                // The other one has won or failed by now.
            }
        }
    }

    private static PostgresException? Cause(Exception? e)
    {
        while (e is not null and not PostgresException)
            e = e.InnerException;
        return e as PostgresException;
    }
}
