using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>What was asked about dates and what was answered, for those who learn from them.</summary>
public sealed class DateCheckFacts
{
    private readonly ILookup<(DateCheckKind Kind, Guid Subject), DateCheck> _checks;

    /// <param name="checks">The older first.</param>
    public DateCheckFacts(IEnumerable<DateCheck> checks) => _checks = checks.ToLookup(c => (c.Kind, c.SubjectId));

    /// <summary>Nobody was asked about anything.</summary>
    public static DateCheckFacts None { get; } = new([]);

    /// <param name="unitIds">Null for all there are, bonds' and workshops' among them.</param>
    public static async Task<DateCheckFacts> LoadAsync(ClinicDb db, IReadOnlyCollection<Guid>? unitIds, CancellationToken cancellation) =>
        new(
            await db
                .DateChecks.AsNoTracking()
                .Where(c => unitIds == null || c.HairSystemId != null && unitIds.Contains(c.HairSystemId.Value))
                .ToListAsync(cancellation)
        );

    /// <summary>What was said of such dates.</summary>
    public SpellStanding Standing(DateCheckKind kind, Guid subject, LocalDate from, LocalDate? until) =>
        _checks[(kind, subject)].LastOrDefault(c => c.IsAbout(from, until) && !c.IsOpen)?.Answer switch
        {
            DateCheckAnswer.Right => SpellStanding.Trusted,
            DateCheckAnswer.Wrong => SpellStanding.LeftOut,
            _ => SpellStanding.NotAsked,
        };

    /// <summary>The last day on which somebody said that an order is still on its way; null where nobody did.</summary>
    public LocalDate? LastSaidWaiting(Guid unitId, LocalDate since) =>
        _checks[(DateCheckKind.OrderWaiting, unitId)].Where(c => c.IsAbout(since, null)).Max(c => c.AnsweredOn);

    /// <summary>A workshop was asked about days of the year that meet these, and what was said.</summary>
    public IEnumerable<DateCheck> OfWorkshop(Guid workshopId) => _checks[(DateCheckKind.WorkshopClosed, workshopId)];

    /// <summary>Those of what was found that are not asked already.</summary>
    public IEnumerable<DateCheck> NotAskedYet(IEnumerable<DateCheck> found) => found.Where(check => Same(check) is null);

    /// <summary>
    /// Brings the open questions of some kinds up to what is found now: what is new is asked, what is not in doubt any more is not. An
    /// answer stays; whoever gives one at the same moment is heard.
    /// </summary>
    public async Task StageAsync(
        ClinicDb db,
        IReadOnlyCollection<DateCheck> found,
        IReadOnlyCollection<DateCheckKind> kinds,
        CancellationToken cancellation
    )
    {
        db.DateChecks.AddRange(NotAskedYet(found));
        var stay = found.Select(Same).OfType<DateCheck>().Select(c => c.Id).ToHashSet();
        var over = _checks
            .Where(g => kinds.Contains(g.Key.Kind))
            .SelectMany(g => g)
            .Where(c => c.IsOpen && !stay.Contains(c.Id))
            .Select(c => c.Id)
            .ToList();
        if (over.Count > 0)
            await db.DateChecks.Where(c => over.Contains(c.Id) && c.Answer == null).ExecuteDeleteAsync(cancellation);
    }

    private DateCheck? Same(DateCheck check) =>
        _checks[(check.Kind, check.SubjectId)].FirstOrDefault(c => c.IsOpen && c.IsAbout(check.From, check.Until));
}
