using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Settings;

/// <summary>Edits that two people may make at once.</summary>
public static class ConcurrentEdits
{
    /// <summary>Saves the row even when only its parts changed, so that the later of two edits is told.</summary>
    public static void ExpectVersion<T>(ClinicDb db, T row, uint version)
        where T : PracticeOwned
    {
        db.Entry(row).State = EntityState.Modified;
        WriteOnce.ExpectVersion(db, row, version);
    }

    /// <summary>Whether a failed save would have put the same thing into a table twice.</summary>
    public static bool IsUniqueViolation(DbUpdateException e, string table) =>
        e.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } p && p.TableName == table;
}
