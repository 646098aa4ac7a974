using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What is known of how long one unit lasts, as of a day.</summary>
/// <param name="WornDays">Days on a head until then.</param>
/// <param name="WornOut">A look found it so: from then on it is worn in an emergency only.</param>
/// <param name="Life">In worn days.</param>
/// <param name="RepairedAt">Worn days at its first repair; null where it never was repaired.</param>
public sealed record UnitWear(int WornDays, bool WornOut, Spell Life, double? RepairedAt)
{
    /// <summary>What was written of how it looked, in order of days; looks that wrote nothing are not among them.</summary>
    public IReadOnlyList<GradedLook> Grades { get; init; } = [];

    /// <param name="worn">When it was on a head.</param>
    /// <param name="seen">What take-downs found.</param>
    /// <param name="repairs">The days on which it was repaired.</param>
    /// <param name="needEnded">It went because its client needs none any more: it lasted at least until the last look.</param>
    /// <param name="asRetired">What whoever retired it wrote of how it looked; null where nobody was asked.</param>
    /// <remarks>
    /// On a head nobody sees it wear out: it is known to have lasted until somebody last looked, not until today. Whoever retired it and
    /// was asked how it looked has said what is known: if they left it open, it lasted at least until the look before.
    /// </remarks>
    public static UnitWear FromRecords(
        UnitState state,
        IReadOnlyCollection<WornPeriod> worn,
        IEnumerable<UnitInspection> seen,
        IEnumerable<LocalDate> repairs,
        LocalDate today,
        bool needEnded = false,
        UnitInspection? asRetired = null
    )
    {
        UnitInspection[] inspections = [.. asRetired is null ? seen : seen.Append(asRetired)];
        var looks = LooksAt(worn, inspections);
        var days = WornPeriod.DaysWornBefore(worn, today);
        var retired = state == UnitState.Retired && !needEnded && asRetired is null;
        var known = retired ? days : looks.Where(s => s.WornOut == false).Select(s => s.WornDays).LastOrDefault();
        var repaired = repairs.Select(day => (double)WornPeriod.DaysWornBefore(worn, day)).ToArray();
        var (life, repairedAt) = UnitLifeBuilder.FromInspectionsAndRepairs(looks, known, repaired, retired);
        return new UnitWear(days, Array.Exists(looks, s => s.WornOut == true), life, repairedAt)
        {
            Grades =
            [
                .. inspections
                    .Where(i => i.Grades.AnyGiven)
                    .OrderBy(i => i.Day)
                    .Select(i => new GradedLook(WornPeriod.DaysWornBefore(worn, i.Day), i.Grades, i.Copied, i.Grader)),
            ],
        };
    }

    // A stylist who bonds a unit has seen that it still wears, and nothing more: that is no grade. One that was found worn out that day
    // was bonded in an emergency.
    private static UnitLook[] LooksAt(IReadOnlyCollection<WornPeriod> worn, IReadOnlyCollection<UnitInspection> inspections) =>
        [
            .. worn.Where(s => inspections.All(i => i.Day != s.From || i.WornOut != true))
                .Select(s => (Day: s.From, Look: new UnitLook(WornPeriod.DaysWornBefore(worn, s.From), false)))
                .Concat(inspections.Select(i => (i.Day, Look: i.ToLook(worn))))
                .OrderBy(l => l.Day)
                .Select(l => l.Look),
        ];
}

/// <summary>A spell on a head, for counting worn days: from application to removal, or still going on.</summary>
public readonly record struct WornPeriod(Guid UnitId, LocalDate From, LocalDate? To)
{
    /// <summary>As it was known at the end of a day; null where it had not begun.</summary>
    public WornPeriod? AsOf(LocalDate day) => From > day ? null : this with { To = To <= day ? To : null };

    /// <summary>Worn days up to and without that day.</summary>
    public static int DaysWornBefore(IEnumerable<WornPeriod> stretches, LocalDate day) =>
        stretches.Sum(s => Math.Max(0, Period.DaysBetween(s.From, s.To < day ? s.To.Value : day)));
}
