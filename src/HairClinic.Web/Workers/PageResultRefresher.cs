using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Workers;

/// <summary>Works out what pages show of the whole book, once for each group of people who see the same of it.</summary>
public sealed class PageResultRefresher(ClinicDbFactory databases, PracticeJobRunner jobs)
{
    public async Task RunAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var before = await db
            .StoredPageResults.Where(a => !PastReplayStore.Questions.Contains(a.Question))
            .Select(a => a.Id)
            .ToListAsync(cancellation);
        foreach (var reader in await ReadersAsync(db, cancellation))
        {
            // As themselves: the fence decides what they see, at night as by day.
            await jobs.RunAsAsync(
                reader,
                async services =>
                {
                    foreach (var page in services.GetServices<INightlyPage>())
                        await page.PrecomputeAsync(cancellation);
                    return true;
                }
            );
        }
        await db.StoredPageResults.Where(a => before.Contains(a.Id)).ExecuteDeleteAsync(cancellation);
    }

    /// <summary>One of each group of people who see the same.</summary>
    public static async Task<IEnumerable<PersonActor>> ReadersAsync(ClinicDb db, CancellationToken cancellation)
    {
        var all = await db.Salons.OrderBy(s => s.Id).Select(s => s.Id).ToListAsync(cancellation);
        var people = await db
            .People.AsNoTracking()
            .Where(p => !p.Left && (p.Role == StaffRole.Owner || p.Role == StaffRole.Manager))
            .Include(p => p.Salons)
            .OrderBy(p => p.Id)
            .ToListAsync(cancellation);
        return people
            .Select(p => new PersonActor(
                db.PracticeId,
                p.Id,
                p.Role,
                p.Role == StaffRole.Owner ? all : [.. p.Salons.Select(s => s.SalonId).Order()],
                null
            ))
            .Where(r => r.Salons.Count > 0)
            .DistinctBy(r => (r.StaffRole, string.Join(',', r.Salons)));
    }
}
