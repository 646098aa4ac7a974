using System.Linq.Expressions;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Privacy;

/// <summary>What a practice's rules on keeping would take out, and taking it out, a batch at a time.</summary>
public sealed class RetentionEnforcer(ClientEraser eraser, IClock clock)
{
    private const int Batch = 1000;

    /// <summary>The practice's rules; those it never touched as they are brought, not saved yet.</summary>
    public static async Task<IReadOnlyList<RetentionRule>> RulesAsync(ClinicDb db, CancellationToken cancellation)
    {
        var own = await db.RetentionRules.AsNoTracking().ToListAsync(cancellation);
        return
        [
            .. Enum.GetValues<RetentionSubject>()
                .Select(s => own.FirstOrDefault(r => r.Subject == s) ?? new RetentionRule(Guid.CreateVersion7(), s)),
        ];
    }

    /// <summary>Of clients and what was noted of them a manager sees and takes out those of their own salons; an owner all.</summary>
    /// <returns>Null: of all.</returns>
    public static IReadOnlyList<Guid>? SalonScopeOfPerson(PersonActor person) => person.StaffRole == StaffRole.Owner ? null : person.Salons;

    /// <param name="salons">Whose clients count, by home salon; null for all.</param>
    public async Task<Over> CountAsync(ClinicDb db, RetentionRule rule, IReadOnlyList<Guid>? salons, CancellationToken cancellation) =>
        rule.Subject switch
        {
            RetentionSubject.ContactNotes => await CountAsync(ContactNotes(db, rule, salons), n => n.At, cancellation),
            RetentionSubject.Drafts => await CountAsync(Drafts(db, rule), d => d.SavedAt, cancellation),
            RetentionSubject.SignInLinks => await CountAsync(Links(db, rule), l => l.ExpiresAt, cancellation),
            RetentionSubject.WriteKeys => await CountAsync(Keys(db, rule), k => k.At, cancellation),
            RetentionSubject.DoneWork => await CountAsync(Work(db, rule), w => w.AskedAt, cancellation),
            _ => await LeftAsync(db, rule, salons, cancellation),
        };

    /// <param name="salons">Whose clients count, by home salon; null for all.</param>
    /// <returns>How many rows went, or clients were erased.</returns>
    /// <exception cref="Refusal">One of the clients cannot be erased now; those before them were.</exception>
    public async Task<int> ApplyAsync(ClinicDb db, RetentionRule rule, IReadOnlyList<Guid>? salons, CancellationToken cancellation) =>
        rule.Subject switch
        {
            RetentionSubject.ContactNotes => await InBatchesAsync(() =>
                db
                    .ContactNotes.Where(n => ContactNotes(db, rule, salons).OrderBy(x => x.Id).Take(Batch).Select(x => x.Id).Contains(n.Id))
                    .ExecuteDeleteAsync(cancellation)
            ),
            RetentionSubject.Drafts => await InBatchesAsync(() =>
                db
                    .Drafts.Where(n => Drafts(db, rule).OrderBy(x => x.Id).Take(Batch).Select(x => x.Id).Contains(n.Id))
                    .ExecuteDeleteAsync(cancellation)
            ),
            RetentionSubject.SignInLinks => await Links(db, rule).ExecuteDeleteAsync(cancellation),
            RetentionSubject.WriteKeys => await InBatchesAsync(() =>
                db
                    .WriteKeys.Where(n => Keys(db, rule).OrderBy(x => x.Id).Take(Batch).Select(x => x.Id).Contains(n.Id))
                    .ExecuteDeleteAsync(cancellation)
            ),
            RetentionSubject.DoneWork => await InBatchesAsync(() =>
                db
                    .WorkItems.Where(n => Work(db, rule).OrderBy(x => x.Id).Take(Batch).Select(x => x.Id).Contains(n.Id))
                    .ExecuteDeleteAsync(cancellation)
            ),
            _ => await EraseLeftAsync(db, rule, salons, cancellation),
        };

    /// <summary>The rules that go by themselves and were not applied since yesterday, while the practice sleeps (<see cref="MaintenanceHours"/> at its first salon).</summary>
    /// <returns>How many rows went.</returns>
    public async Task<int> ApplyDueAsync(ClinicDb db, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var zone = await db.Salons.AsNoTracking().OrderBy(s => s.Id).Select(s => s.Zone).FirstOrDefaultAsync(cancellation) ?? "UTC";
        if (!MaintenanceHours.Cover(now, zone))
            return 0;
        var gone = 0;
        foreach (var rule in (await RulesAsync(db, cancellation)).Where(r => r.ByItself))
        {
            if (await ClaimAsync(db, rule, now, cancellation))
                gone += await ApplyAsync(db, rule, salons: null, cancellation);
        }
        return gone;
    }

    // Two programs on one database: whoever marks the row first applies it.
    private static async Task<bool> ClaimAsync(ClinicDb db, RetentionRule rule, Instant now, CancellationToken cancellation)
    {
        var since = now - Duration.FromHours(20);
        if (await db.RetentionRules.AnyAsync(r => r.Id == rule.Id, cancellation))
            return await db
                    .RetentionRules.Where(r => r.Id == rule.Id && r.ByItself && (r.LastAppliedAt == null || r.LastAppliedAt < since))
                    .ExecuteUpdateAsync(r => r.SetProperty(x => x.LastAppliedAt, (Instant?)now), cancellation) == 1;
        rule.MarkApplied(now);
        db.RetentionRules.Add(rule);
        try
        {
            await db.SaveChangesAsync(cancellation);
            return true;
        }
        catch (DbUpdateException)
        {
            db.ChangeTracker.Clear();
            return false;
        }
    }

    private async Task<int> EraseLeftAsync(ClinicDb db, RetentionRule rule, IReadOnlyList<Guid>? salons, CancellationToken cancellation)
    {
        var left = await Left(db, rule, salons).OrderBy(c => c.LeftOn).Select(c => c.Id).ToListAsync(cancellation);
        foreach (var client in left)
            await eraser.EraseAsync(db, Guid.CreateVersion7(), client, expected: null, cancellation);
        return left.Count;
    }

    private async Task<Over> LeftAsync(ClinicDb db, RetentionRule rule, IReadOnlyList<Guid>? salons, CancellationToken cancellation)
    {
        var left = await Left(db, rule, salons)
            .OrderBy(c => c.LeftOn)
            .ThenBy(c => c.Code)
            .Select(c => new { c.Code, c.LeftOn })
            .ToListAsync(cancellation);
        return new(left.Count, left.FirstOrDefault()?.LeftOn, left.LastOrDefault()?.LeftOn, [.. left.Select(c => c.Code)]);
    }

    private static async Task<Over> CountAsync<T>(IQueryable<T> rows, Expression<Func<T, Instant>> at, CancellationToken cancellation)
    {
        var count = await rows.CountAsync(cancellation);
        if (count == 0)
            return new(0, null, null, []);
        var oldest = await rows.OrderBy(at).Select(at).FirstAsync(cancellation);
        var newest = await rows.OrderByDescending(at).Select(at).FirstAsync(cancellation);
        return new(count, oldest.InUtc().Date, newest.InUtc().Date, []);
    }

    private static async Task<int> InBatchesAsync(Func<Task<int>> delete)
    {
        var gone = 0;
        for (var last = Batch; last == Batch; gone += last)
            last = await delete();
        return gone;
    }

    private Instant Before(RetentionRule rule) => clock.GetCurrentInstant() - Duration.FromDays(rule.KeepDays);

    private IQueryable<ContactNote> ContactNotes(ClinicDb db, RetentionRule rule, IReadOnlyList<Guid>? salons)
    {
        var before = Before(rule);
        return db.ContactNotes.Where(n =>
            n.At < before && (salons == null || db.Clients.Any(c => c.Id == n.ClientId && salons.Contains(c.HomeSalonId)))
        );
    }

    private IQueryable<Draft> Drafts(ClinicDb db, RetentionRule rule)
    {
        var before = Before(rule);
        return db.Drafts.Where(d => d.SavedAt < before);
    }

    private IQueryable<SignInLink> Links(ClinicDb db, RetentionRule rule)
    {
        var before = Before(rule);
        return db.SignInLinks.Where(l => l.PracticeId == db.PracticeId && (l.ExpiresAt < before || l.UsedAt < before));
    }

    private IQueryable<WriteKey> Keys(ClinicDb db, RetentionRule rule)
    {
        var before = Before(rule);
        return db.WriteKeys.Where(k => k.At < before);
    }

    private IQueryable<WorkItem> Work(ClinicDb db, RetentionRule rule)
    {
        var before = Before(rule);
        return db.WorkItems.Where(w => w.DoneAt < before);
    }

    // Somebody who left and has a visit ahead of them has come back.
    private IQueryable<Client> Left(ClinicDb db, RetentionRule rule, IReadOnlyList<Guid>? salons)
    {
        var before = Before(rule).InUtc().Date;
        var now = clock.GetCurrentInstant();
        return db
            .Clients.AsNoTracking()
            .Where(c =>
                c.LeftOn < before
                && c.MergedIntoId == null
                && c.ErasedAt == null
                && (salons == null || salons.Contains(c.HomeSalonId))
                && !db.Visits.Any(v => v.ClientId == c.Id && v.StartsAt > now && v.HoldsChair)
            );
    }

    /// <summary>What a rule would take out.</summary>
    /// <param name="Codes">For clients: whom.</param>
    public sealed record Over(int Rows, LocalDate? Oldest, LocalDate? Newest, IReadOnlyList<string> Codes);
}
