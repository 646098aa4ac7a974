using Npgsql;

namespace HairClinic.Web.Data.Books;

/// <summary>What was taken by somebody else a moment earlier.</summary>
public enum SlotClash
{
    Chair,
    Hands,
}

/// <summary>Reads in a failed save whether it lost a race for a chair or for a person's hands.</summary>
public static class SlotClashes
{
    private const int Attempts = 5;

    public static SlotClash? In(Exception failed) =>
        Cause(failed)?.ConstraintName switch
        {
            "ex_visits_chair" => SlotClash.Chair,
            "ex_visit_segments_hands" => SlotClash.Hands,
            _ => null,
        };

    /// <summary>
    /// Two saves that write into the same gap at the very same moment each wait for the other; PostgreSQL then breaks
    /// one off before it knows who won. That one tries again and gets a plain answer.
    /// </summary>
    public static async Task<T> SettleAsync<T>(Func<Task<T>> write)
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
