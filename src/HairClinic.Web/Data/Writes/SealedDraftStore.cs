using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Data.Writes;

/// <summary>Keeps one's own unsent form about a client's health, sealed, and gives it back. Nothing of it stays in the browser.</summary>
public sealed class SealedDraftStore(ClinicDbFactory databases, Sealer sealer, CurrentActor current, IClock clock)
{
    private const string Purpose = "draft";

    /// <returns>Null when there is none that can be read.</returns>
    public async Task<TInput?> FindAsync<TInput>(ClinicDb db, string form, Guid clientId, CancellationToken cancellation)
        where TInput : class
    {
        if (await Mine(db, form, clientId).AsNoTracking().SingleOrDefaultAsync(cancellation) is not { } draft)
            return null;
        var opened = await sealer.OpenAsync(db, clientId, Purpose, draft.Id, draft.Closed, cancellation);
        if (opened.Bytes is not { } plain)
            return null;
        try
        {
            return JsonSerializer.Deserialize<TInput>(plain, JsonColumns.Options);
        }
        catch (JsonException)
        {
            return null;
        }
        finally
        {
            CryptographicOperations.ZeroMemory(plain);
        }
    }

    /// <summary>The last to write wins: it is one person's own draft.</summary>
    public async Task StoreAsync<TInput>(string form, Guid clientId, TInput input, CancellationToken cancellation)
        where TInput : class
    {
        await using var db = databases.Open();
        var plain = JsonSerializer.SerializeToUtf8Bytes(input, JsonColumns.Options);
        try
        {
            var known = await Mine(db, form, clientId).Select(d => (Guid?)d.Id).SingleOrDefaultAsync(cancellation);
            var id = known ?? Guid.CreateVersion7();
            var closed = await sealer.SealAsync(db, clientId, Purpose, id, plain, cancellation);
            var now = clock.GetCurrentInstant();
            if (known is null)
            {
                db.SealedDrafts.Add(new SealedDraft(id, current.Person.PersonId, form, clientId, closed, now));
                await db.SaveChangesAsync(cancellation);
                return;
            }
            await db
                .SealedDrafts.Where(d => d.Id == id)
                .ExecuteUpdateAsync(d => d.SetProperty(x => x.Closed, closed).SetProperty(x => x.SavedAt, now), cancellation);
        }
        // The same person's other screen was first by a moment; the next touch keeps this one.
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, SealedDraftMap.OneEach)) { }
        finally
        {
            CryptographicOperations.ZeroMemory(plain);
        }
    }

    /// <summary>Throws away one's own draft in the caller's transaction.</summary>
    public Task DeleteAsync(ClinicDb db, string form, Guid clientId, CancellationToken cancellation) =>
        Mine(db, form, clientId).ExecuteDeleteAsync(cancellation);

    private IQueryable<SealedDraft> Mine(ClinicDb db, string form, Guid clientId) =>
        db.SealedDrafts.Where(d => d.PersonId == current.Person.PersonId && d.Form == form && d.ClientId == clientId);
}
