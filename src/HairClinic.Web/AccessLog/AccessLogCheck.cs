using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;

namespace HairClinic.Web.AccessLog;

/// <summary>Walks a practice's access log from its first line and tells whether it is whole.</summary>
public sealed class AccessLogCheck(MasterKeys masters, PracticeJobRunner jobs)
{
    private const int Page = 1000;

    /// <param name="written">A head somebody wrote down outside: it must still be a line of the chain, which catches a log cut short.</param>
    public Task<Outcome> WalkAsync(Guid practiceId, Head? written, CancellationToken cancellation) =>
        jobs.RunJobAsync(practiceId, "verify log", services => WalkAsync(services, written, cancellation));

    private async Task<Outcome> WalkAsync(IServiceProvider services, Head? written, CancellationToken cancellation)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        var last = new Head(0, AccessChain.Beginning);
        var found = written is null;
        for (var more = true; more; )
        {
            var page = await db
                .AccessNotes.AsNoTracking()
                .Where(n => n.Number > last.Number)
                .OrderBy(n => n.Number)
                .Take(Page)
                .ToListAsync(cancellation);
            more = page.Count == Page;
            foreach (var note in page)
            {
                if (!Fits(note, last))
                    return new Outcome(last, last.Number + 1, MissesHead: false);
                last = new Head(note.Number, note.Hash);
                found |= written is { } head && head.Number == last.Number && head.Hash.AsSpan().SequenceEqual(last.Hash);
            }
        }
        var kept = await db.AccessHeads.AsNoTracking().Select(h => new { h.Number, h.Hash }).SingleOrDefaultAsync(cancellation);
        if ((kept?.Number ?? 0) != last.Number || kept is not null && !kept.Hash.AsSpan().SequenceEqual(last.Hash))
            return new Outcome(last, last.Number + 1, MissesHead: false);
        return new Outcome(last, Broken: null, MissesHead: !found);
    }

    private bool Fits(AccessNote note, Head before) =>
        note.Number == before.Number + 1
        && note.PreviousHash.AsSpan().SequenceEqual(before.Hash)
        && masters.Find(note.KeyId) is { } master
        && CryptographicOperations.FixedTimeEquals(note.Hash, AccessChain.Sign(note, master));

    /// <summary>A line's number and signature: what is worth writing down somewhere else.</summary>
    public sealed record Head(long Number, byte[] Hash)
    {
        public override string ToString() => $"{Number}:{Convert.ToHexStringLower(Hash)}";
    }

    /// <param name="Last">The last line that fits.</param>
    /// <param name="Broken">The first number that does not fit, or is not there.</param>
    /// <param name="MissesHead">The head written down is no line of this log.</param>
    public sealed record Outcome(Head Last, long? Broken, bool MissesHead)
    {
        public bool Whole => Broken is null && !MissesHead;
    }
}
