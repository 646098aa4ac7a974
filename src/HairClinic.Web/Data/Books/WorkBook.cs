using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>Hands out work so that two programs on one database never do the same.</summary>
public static class WorkBook
{
    /// <summary>The next item that is due, locked until the transaction ends; null when there is none.</summary>
    public static Task<WorkItem?> TakeAsync(ClinicDb db, Instant now, CancellationToken cancellation) =>
        db
            .WorkItems.FromSql(
                $"""
                select *, xmin from work_items
                where done_at is null and not_before <= {now} and practice_id = {db.PracticeId}
                order by not_before, id limit 1 for update skip locked
                """
            )
            .AsTracking()
            .SingleOrDefaultAsync(cancellation);
}
