using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Fence;

namespace HairClinic.Web.AccessLog;

/// <summary>Writes the access log, and tells a client who saw what is theirs.</summary>
public sealed class AccessLogStore(MasterKeys masters, IClock clock)
{
    /// <summary>
    /// Notes who does what. Inside the caller's transaction the line stands or falls with the rest; without one it is written
    /// at once. Either way: note first, then show or save, so that nothing is ever seen without its line and two that wait for
    /// the chain never wait for each other.
    /// </summary>
    /// <param name="reason">A few words of ours; never a name, never health.</param>
    public Task NoteAsync(
        ClinicDb db,
        AccessAction deed,
        Guid? clientId,
        Guid? subjectId = null,
        string? reason = null,
        CancellationToken cancellation = default
    ) => NoteOnBehalfOfAsync(db, db.Actor?.Author ?? throw new NoActorException(), deed, clientId, subjectId, reason, cancellation);

    /// <summary>As <see cref="NoteAsync"/>, by a job that writes down what somebody else did.</summary>
    public async Task NoteOnBehalfOfAsync(
        ClinicDb db,
        Actor author,
        AccessAction deed,
        Guid? clientId,
        Guid? subjectId,
        string? reason,
        CancellationToken cancellation
    )
    {
        var own = db.Database.CurrentTransaction is null ? await db.Database.BeginTransactionAsync(cancellation) : null;
        await using (own)
        {
            var head = await LockHeadAsync(db, cancellation);
            await AddAsync(db, Line(author, head, deed, clientId, subjectId, reason), cancellation);
            if (own is not null)
                await own.CommitAsync(cancellation);
        }
    }

    /// <summary>Who saw or changed what a client confided, newest first: when, in which role, and what. No person and no salon is named.</summary>
    public static async Task<IReadOnlyList<Seen>> AccessesToClientAsync(ClinicDb db, Guid clientId, CancellationToken cancellation) =>
        await db
            .AccessNotes.AsNoTracking()
            .Where(n => n.ClientId == clientId)
            .OrderByDescending(n => n.Number)
            .Take(500)
            .Select(n => new Seen(n.At, n.ActorKind, n.Role, n.Action))
            .ToListAsync(cancellation);

    private AccessNote Line(
        Actor actor,
        (long Number, byte[] Hash) head,
        AccessAction deed,
        Guid? clientId,
        Guid? subjectId,
        string? reason
    )
    {
        var master = masters.Current;
        var note = new AccessNote(actor.PracticeId, Guid.CreateVersion7(), head.Number + 1)
        {
            At = AccessChain.ToMicroseconds(clock.GetCurrentInstant()),
            ActorKind = actor switch
            {
                PersonActor => AccessActorKind.Person,
                ClientActor => AccessActorKind.Client,
                _ => AccessActorKind.Job,
            },
            ActorId = actor.Id,
            Role = actor is JobActor job ? job.Job : actor.Role,
            Action = deed,
            ClientId = clientId,
            SubjectId = subjectId,
            Reason = reason,
            KeyId = master.Id,
            PreviousHash = head.Hash,
        };
        return note.SetHash(AccessChain.Sign(note, master));
    }

    private static async Task<(long Number, byte[] Hash)> LockHeadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var practice = db.PracticeId;
        for (var made = false; ; made = true)
        {
            var head = await db
                .AccessHeads.FromSql($"select *, xmin from access_heads where practice_id = {practice} for update")
                .AsNoTracking()
                .Select(h => new { h.Number, h.Hash })
                .ToListAsync(cancellation);
            if (head is [var held])
                return (held.Number, held.Hash);
            if (made)
                throw new InvalidOperationException("The access log has no head, so nothing confided can be opened.");
            await db.Database.ExecuteSqlAsync(
                $"""
                insert into access_heads (practice_id, id, number, hash) values ({practice}, {practice}, 0, {AccessChain.Beginning})
                on conflict do nothing
                """,
                cancellation
            );
        }
    }

    // Plain SQL: whoever may add a line need not be allowed to read one, and the change tracker reads what it adds.
    private static Task<int> AddAsync(ClinicDb db, AccessNote n, CancellationToken cancellation) =>
        db.Database.ExecuteSqlAsync(
            $"""
            insert into access_notes (practice_id, id, number, at, actor_kind, actor_id, role, deed, client_id, subject_id, reason,
                                      key_id, previous_hash, hash)
            values ({n.PracticeId}, {n.Id}, {n.Number}, {n.At}, {n.ActorKind.ToString()}, {n.ActorId}, {n.Role}, {n.Action.ToString()},
                    {n.ClientId}, {n.SubjectId}, {n.Reason}, {n.KeyId}, {n.PreviousHash}, {n.Hash});
            update access_heads set number = {n.Number}, hash = {n.Hash} where practice_id = {n.PracticeId};
            """,
            cancellation
        );

    public sealed record Seen(Instant At, AccessActorKind Who, string Role, AccessAction Action);
}
