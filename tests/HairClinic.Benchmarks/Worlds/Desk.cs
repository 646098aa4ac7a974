using HairClinic.Domain.Checks;
using HairClinic.Web.Learning;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>Whoever answers what the program asks about dates: truthfully, some days later.</summary>
/// <remarks>
/// What is written down in a simulated practice is right, and what is waited for is on its way: only of days in which a workshop seems to be
/// closed the answer may be no.
/// </remarks>
/// <param name="closes">Whether the workshops are closed at the end of the year.</param>
internal sealed class Desk(bool closes)
{
    private const int AnswersAfter = 3;
    private readonly List<DateCheck> _checks = [];

    public DateCheckFacts Facts => new(_checks);

    /// <summary>Questions so far, by what they are about.</summary>
    public IEnumerable<DateCheck> Asked => _checks;

    /// <summary>The closures of a workshop that were proposed and accepted.</summary>
    public IEnumerable<NodaTime.DateInterval> ClosuresOf(Guid workshop, NodaTime.LocalDate today) =>
        _checks
            .Where(c => c is { Kind: DateCheckKind.WorkshopClosed, Answer: DateCheckAnswer.Right } && c.WorkshopId == workshop)
            .SelectMany(c => c.ClosuresThrough(today));

    /// <summary>Nobody has said yet that it is still on its way: it is not counted on.</summary>
    public bool MayBeForgotten(UnitRecord unit) =>
        unit.WaitingSince is { } since
        && _checks.Exists(c =>
            c is { Kind: DateCheckKind.OrderWaiting, IsOpen: true }
            && c.HairSystemId == unit.Id
            && c.IsAbout(PracticeRows.DateOf(since), null)
        );

    /// <summary>Questions of some kinds as they are found now: what is not in doubt any more is not asked.</summary>
    public void Bring(IReadOnlyCollection<DateCheck> found, params DateCheckKind[] kinds)
    {
        var asked = Facts.NotAskedYet(found).ToList();
        _checks.RemoveAll(c =>
            c.IsOpen
            && kinds.Contains(c.Kind)
            && !found.Any(f => f.Kind == c.Kind && f.SubjectId == c.SubjectId && f.IsAbout(c.From, c.Until))
        );
        _checks.AddRange(asked);
    }

    public void Answer(int day)
    {
        var today = PracticeRows.DateOf(day);
        foreach (var check in _checks.Where(c => c.IsOpen && c.AskedOn.PlusDays(AnswersAfter) <= today))
            check.SetAnswer(IsRight(check) ? DateCheckAnswer.Right : DateCheckAnswer.Wrong, null, default, today);
    }

    private bool IsRight(DateCheck check) => check.Kind != DateCheckKind.WorkshopClosed || (closes && check.From.Month is 12 or 1);
}
