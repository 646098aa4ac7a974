using HairClinic.Web.Data.Maps;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Data.Writes;

/// <summary>
/// Keeps what the acting person has typed into a long form and not sent yet: one draft a person, form and subject,
/// read on a reload or another tablet, thrown away once the form is saved.
/// </summary>
public sealed class DraftStore(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <returns>Null when there is none, or one of an earlier shape of the form.</returns>
    public async Task<TInput?> FindAsync<TInput>(string form, Guid subjectId, CancellationToken cancellation)
        where TInput : class
    {
        await using var db = databases.Open();
        var body = await Mine(db, form, subjectId).Select(d => d.Body).SingleOrDefaultAsync(cancellation);
        try
        {
            return body is null ? null : JsonSerializer.Deserialize<TInput>(body, JsonColumns.Options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>One round trip, a second the first time. The last to write wins: it is one person's own draft.</summary>
    public async Task StoreAsync<TInput>(string form, Guid subjectId, TInput input, CancellationToken cancellation)
        where TInput : class
    {
        var body = JsonSerializer.Serialize(input, JsonColumns.Options);
        if (await RenewAsync(form, subjectId, body, cancellation))
            return;
        try
        {
            await using var db = databases.Open();
            db.Drafts.Add(new Draft(Guid.CreateVersion7(), current.Person.PersonId, form, subjectId, body, clock.GetCurrentInstant()));
            await db.SaveChangesAsync(cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, DraftMap.OneEach))
        {
            // The same person's other screen was first by a moment.
            await RenewAsync(form, subjectId, body, cancellation);
        }
    }

    /// <summary>Keeps it with the caller's own save.</summary>
    public async Task StageAsync<TInput>(ClinicDb db, string form, Guid subjectId, TInput input, CancellationToken cancellation)
        where TInput : class
    {
        var (body, now) = (JsonSerializer.Serialize(input, JsonColumns.Options), clock.GetCurrentInstant());
        if (await Mine(db, form, subjectId).SingleOrDefaultAsync(cancellation) is { } draft)
            draft.SetBody(body, now);
        else
            db.Drafts.Add(new Draft(Guid.CreateVersion7(), current.Person.PersonId, form, subjectId, body, now));
    }

    /// <summary>Throws away everyone's drafts about a subject that is settled.</summary>
    public async Task DeleteForSubjectAsync(string form, Guid subjectId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await db.Drafts.Where(d => d.Form == form && d.SubjectId == subjectId).ExecuteDeleteAsync(cancellation);
    }

    private async Task<bool> RenewAsync(string form, Guid subjectId, string body, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var now = clock.GetCurrentInstant();
        return await Mine(db, form, subjectId)
                .ExecuteUpdateAsync(d => d.SetProperty(x => x.Body, body).SetProperty(x => x.SavedAt, now), cancellation) > 0;
    }

    private IQueryable<Draft> Mine(ClinicDb db, string form, Guid subjectId) =>
        db.Drafts.Where(d => d.PersonId == current.Person.PersonId && d.Form == form && d.SubjectId == subjectId);
}
