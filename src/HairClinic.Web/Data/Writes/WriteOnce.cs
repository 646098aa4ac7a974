using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Sql;

namespace HairClinic.Web.Data.Writes;

/// <summary>
/// Carries out a submission once. Its id is made when the form opens; sending it again (a double tap, a
/// retry after a lost answer) gives the first answer back, and the same id with another body is refused.
/// </summary>
/// <remarks>
/// The key is written in the same transaction as the change, so the database decides. The happy path costs
/// no extra round trip: only when the write fails is the key looked up.
/// </remarks>
public sealed class WriteOnce(ClinicDbFactory databases, IClock clock)
{
    /// <param name="key">Made when the form opened.</param>
    /// <param name="writeName">The slice's name.</param>
    /// <param name="input">What was submitted; its JSON is the body the key stands for.</param>
    /// <param name="write">Reads and changes entities and says the outcome; saving is done here.</param>
    /// <exception cref="Refusal">The domain says no, or the key was used for something else.</exception>
    /// <exception cref="OvertakenException">A row was changed by someone else since the form opened.</exception>
    public async Task<TOutcome> RunAsync<TInput, TOutcome>(
        Guid key,
        string writeName,
        TInput input,
        Func<ClinicDb, Task<TOutcome>> write,
        CancellationToken cancellation = default
    )
    {
        var hash = SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(input, JsonColumns.Options));
        try
        {
            await using var db = databases.Open();
            var outcome = await write(db);
            var answer = JsonSerializer.Serialize(outcome, JsonColumns.Options);
            db.WriteKeys.Add(new WriteKey(key, writeName, hash, answer, clock.GetCurrentInstant()));
            await db.SaveChangesAsync(cancellation);
            // A write that added to the access log has begun one.
            if (db.Database.CurrentTransaction is { } begun)
                await begun.CommitAsync(cancellation);
            return outcome;
        }
        catch (Exception e) when (e is Refusal or DbUpdateException or InvalidOperationException)
        {
            if (await FirstAnswerAsync<TOutcome>(key, writeName, hash, cancellation) is { } first)
                return first.Outcome;
            if (e is DbUpdateConcurrencyException)
                throw new OvertakenException(e);
            if (HomeSalonRules.Violates(e, HomeSalonRules.StaffOfSalon))
                throw new Refusal("Who works in a salon is for a manager there, or an owner, to say.");
            if (HomeSalonRules.Violates(e, HomeSalonRules.AtHome))
                throw new Refusal("Only the client's home salon does this. Ask somebody who works there, or an owner.");
            if (e.InnerException is PostgresException { SqlState: PostgresErrorCodes.InsufficientPrivilege })
                throw new Refusal("This is not yours to change. Ask somebody of the client's own salon, or a manager.");
            if (e is DbUpdateException failed && ViolatesConstraint(failed, ErasedClientGuardTriggers.NotErased))
                throw new Refusal("This client was erased meanwhile. Nothing was saved.");
            throw;
        }
    }

    /// <summary>Makes the save fail if the row is no longer the one the form opened on.</summary>
    public static void ExpectVersion<T>(ClinicDb db, T row, uint version)
        where T : PracticeOwned => db.Entry(row).Property(r => r.Version).OriginalValue = version;

    /// <summary>Whether a failed save broke the constraint of that name.</summary>
    public static bool ViolatesConstraint(DbUpdateException e, string constraint) =>
        e.InnerException is PostgresException p && p.ConstraintName == constraint;

    private async Task<Answer<TOutcome>?> FirstAnswerAsync<TOutcome>(
        Guid key,
        string writeName,
        byte[] hash,
        CancellationToken cancellation
    )
    {
        await using var db = databases.Open();
        var kept = await db.WriteKeys.AsNoTracking().SingleOrDefaultAsync(k => k.Id == key, cancellation);
        if (kept is null)
            return null;
        if (kept.WriteName != writeName || !kept.BodyHash.AsSpan().SequenceEqual(hash))
            throw new Refusal("This form was sent already with other answers. Open it again to change what was saved.");
        return new Answer<TOutcome>(JsonSerializer.Deserialize<TOutcome>(kept.Answer, JsonColumns.Options)!);
    }

    private sealed record Answer<TOutcome>(TOutcome Outcome);
}

/// <summary>Someone else saved the same thing since the form opened. Nothing of this submission was saved.</summary>
public sealed class OvertakenException(Exception inner) : Exception("Someone else saved this since you opened it.", inner);
