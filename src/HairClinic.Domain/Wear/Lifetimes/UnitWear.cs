using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What is known of how long one unit lasts, as of a day.</summary>
/// <param name="WornDays">Days on a head until then.</param>
/// <param name="WornOut">A look found it so: from then on it is worn in an emergency only.</param>
/// <param name="Life">In worn days.</param>
/// <param name="Stretches">The life before and after its first repair; none where it never was repaired.</param>
public sealed record UnitWear(int WornDays, bool WornOut, Spell Life, IReadOnlyList<UnitLifeSegment> Stretches)
{
    /// <param name="worn">When it was on a head.</param>
    /// <param name="graded">What take-downs found, by day: the worst structural grade, null where nobody looked.</param>
    /// <param name="repairs">The days on which it was repaired.</param>
    /// <param name="needEnded">It went because its client needs none any more: it lasted at least until the last look.</param>
    /// <remarks>
    /// On a head nobody sees it wear out: it is known to have lasted until somebody last looked, not until today. One that was retired
    /// for wear was looked at then.
    /// </remarks>
    public static UnitWear FromRecords(
        UnitState state,
        IReadOnlyCollection<WornPeriod> worn,
        IEnumerable<(LocalDate Day, int? Grade)> graded,
        IEnumerable<LocalDate> repairs,
        LocalDate today,
        bool needEnded = false
    )
    {
        var looks = LooksAt(worn, [.. graded]);
        var days = WornPeriod.DaysWornBefore(worn, today);
        var retired = state == UnitState.Retired && !needEnded;
        var known = retired ? days : looks.Where(s => s.Grade < InspectionGrades.PlanReplacement).Select(s => s.WornDays).LastOrDefault();
        var repaired = repairs.Select(day => (double)WornPeriod.DaysWornBefore(worn, day)).ToArray();
        return new UnitWear(
            days,
            Array.Exists(looks, s => s.Grade >= InspectionGrades.PlanReplacement),
            UnitLifeBuilder.FromInspections(looks, known, retired),
            repaired.Length == 0 ? [] : UnitLifeBuilder.SplitAtFirstRepair(looks, known, repaired, retired)
        );
    }

    // A stylist who bonds a unit has looked at it and found that it still wears; a take-down that day says more.
    private static (double WornDays, int? Grade)[] LooksAt(
        IReadOnlyCollection<WornPeriod> worn,
        IReadOnlyCollection<(LocalDate Day, int? Grade)> graded
    ) =>
        [
            .. worn.Where(s => graded.All(g => g.Day != s.From))
                .Select(s => (Day: s.From, Grade: (int?)0))
                .Concat(graded)
                .OrderBy(l => l.Day)
                .Select(l => ((double)WornPeriod.DaysWornBefore(worn, l.Day), l.Grade)),
        ];
}

/// <summary>A spell on a head, for counting worn days: from application to removal, or still going on.</summary>
public readonly record struct WornPeriod(Guid UnitId, LocalDate From, LocalDate? To)
{
    /// <summary>Worn days up to and without that day.</summary>
    public static int DaysWornBefore(IEnumerable<WornPeriod> stretches, LocalDate day) =>
        stretches.Sum(s => Math.Max(0, Period.DaysBetween(s.From, s.To < day ? s.To.Value : day)));
}
