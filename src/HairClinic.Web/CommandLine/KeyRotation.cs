using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Keys;

namespace HairClinic.Web.CommandLine;

/// <summary>
/// Makes a new master key current and rewraps every client's key. Interrupted, it continues where it stopped: no second
/// key is added while client keys still lie under an older one.
/// </summary>
public sealed class KeyRotation(MasterKeys masters, Sealer sealer, AccessLogStore log, PracticeJobRunner jobs)
{
    public const int Batch = 200;

    public async Task<Outcome> RotateMasterKeyAsync(CancellationToken cancellation)
    {
        var added = (await ReadStatusAsync(cancellation)).Behind == 0;
        if (added)
            masters.GenerateNew();
        var rewrapped = 0;
        foreach (var practice in await jobs.PracticeIdsAsync(cancellation))
        {
            await jobs.RunJobAsync(practice, "keys", services => NoteAsync(services, cancellation));
            int done;
            do
            {
                done = await jobs.RunJobAsync(practice, "keys", services => RewrapAsync(services, cancellation));
                rewrapped += done;
            } while (done > 0);
        }
        return new Outcome(added, masters.Current.Id, rewrapped);
    }

    public async Task<Status> ReadStatusAsync(CancellationToken cancellation)
    {
        var (behind, all, destroyed) = (0, 0, 0);
        var current = masters.Current.Id;
        foreach (var practice in await jobs.PracticeIdsAsync(cancellation))
        {
            var counts = await jobs.RunJobAsync(
                practice,
                "keys",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await db
                        .ClientKeys.GroupBy(k => new { Gone = k.DestroyedAt != null, Old = k.MasterKeyId != current })
                        .Select(g => new
                        {
                            g.Key.Gone,
                            g.Key.Old,
                            Count = g.Count(),
                        })
                        .ToListAsync(cancellation);
                }
            );
            all += counts.Sum(c => c.Count);
            destroyed += counts.Where(c => c.Gone).Sum(c => c.Count);
            behind += counts.Where(c => c is { Gone: false, Old: true }).Sum(c => c.Count);
        }
        return new Status(masters.File, masters.All, all, destroyed, behind);
    }

    // Each practice's own log says so, under the key that is in front now; a rotation taken up again is noted again.
    private async Task<bool> NoteAsync(IServiceProvider services, CancellationToken cancellation)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        await log.NoteAsync(db, AccessAction.RotatedKeys, clientId: null, cancellation: cancellation);
        return true;
    }

    private async Task<int> RewrapAsync(IServiceProvider services, CancellationToken cancellation)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        var current = masters.Current;
        var old = await db
            .ClientKeys.Where(k => k.DestroyedAt == null && k.MasterKeyId != current.Id)
            .OrderBy(k => k.Id)
            .Take(Batch)
            .ToListAsync(cancellation);
        foreach (var row in old)
        {
            var key = sealer.Unwrap(row);
            row.ReplaceWrapped(sealer.Wrap(row.PracticeId, row.ClientId, key, current), current.Id);
            CryptographicOperations.ZeroMemory(key);
        }
        try
        {
            await db.SaveChangesAsync(cancellation);
        }
        // Someone's key was destroyed meanwhile. The next round reads again.
        catch (DbUpdateConcurrencyException) { }
        return old.Count;
    }

    public sealed record Outcome(bool Added, string CurrentId, int Rewrapped);

    /// <param name="Behind">Client keys still wrapped by an older master key.</param>
    public sealed record Status(string File, IReadOnlyList<MasterKey> Keys, int ClientKeys, int Destroyed, int Behind);
}
