using HairClinic.Domain.Replay;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Learning;

/// <summary>The stored result of the replay, one for all: of the whole practice, in numbers, kept for each group of those who may look.</summary>
public static class PastReplayStore
{
    /// <summary>Its name among stored page results; another one where what is kept changes.</summary>
    public const string Question = "how-well-it-said/1";

    private const string Asked = "how-well-it-said/asked";

    /// <summary>What is its own among stored page results: the night does not take it out.</summary>
    public static readonly IReadOnlyList<string> Questions = [Question, Asked];

    /// <summary>Null where none was worked out yet.</summary>
    public static Task<PastReplayResult?> FindAsync(ClinicDb db, PersonActor reader, CancellationToken cancellation) =>
        PageResultStore.FindAsync<PastReplayResult>(db, reader, Question, cancellation);

    /// <summary>Wants it worked out now, whatever is kept.</summary>
    public static Task AskAsync(ClinicDb db, PersonActor asking, Instant now, CancellationToken cancellation) =>
        PageResultStore.StoreAsync(db, asking, Asked, now.ToUnixTimeSeconds(), cancellation);

    public static Task<bool> IsAskedAsync(ClinicDb db, CancellationToken cancellation) =>
        db.StoredPageResults.AnyAsync(a => a.Question == Asked, cancellation);

    public static Task ForgetAskedAsync(ClinicDb db, CancellationToken cancellation) =>
        db.StoredPageResults.Where(a => a.Question == Asked).ExecuteDeleteAsync(cancellation);

    /// <summary>The newest of anybody's: they are all the same.</summary>
    public static Task<PastReplayResult?> FindNewestAsync(ClinicDb db, CancellationToken cancellation) =>
        PageResultStore.FindNewestAsync<PastReplayResult>(db, Question, cancellation);

    /// <summary>Keeps it for these readers in place of all that was kept, and takes out what was asked by then.</summary>
    public static async Task ReplaceAsync(
        ClinicDb db,
        IEnumerable<PersonActor> readers,
        PastReplayResult result,
        CancellationToken cancellation
    )
    {
        var before = await db.StoredPageResults.Where(a => Questions.Contains(a.Question)).Select(a => a.Id).ToListAsync(cancellation);
        foreach (var reader in readers)
            await PageResultStore.StoreAsync(db, reader, Question, result, cancellation);
        await db.StoredPageResults.Where(a => before.Contains(a.Id)).ExecuteDeleteAsync(cancellation);
    }
}
