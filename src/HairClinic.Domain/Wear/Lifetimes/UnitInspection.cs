using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What somebody wrote down of how a unit looked: at a take-down, or as it was retired.</summary>
/// <param name="Grades">What was not looked at is blank.</param>
public sealed record UnitInspection(LocalDate Day, InspectionGrades Grades)
{
    /// <summary>True: filled in as they were last time; false: a look of its own; null: not asked.</summary>
    public bool? Copied { get; init; }

    public Guid? Grader { get; init; }

    /// <summary>What was said of it where the grades leave it open.</summary>
    public bool? SaidWornOut { get; init; }

    /// <summary>Of one found worn out: the first day on which it looked so, where somebody knew.</summary>
    public LocalDate? WornOutOn { get; init; }

    /// <summary>And if not, about when, as it was said on <see cref="Day"/>.</summary>
    public SinceWhen? WornOutSince { get; init; }

    public bool? WornOut => Grades.IsAtLeast(InspectionGrades.PlanReplacement) ?? SaidWornOut;

    internal UnitLook ToLook(IReadOnlyCollection<WornPeriod> worn)
    {
        var look = new UnitLook(WornPeriod.DaysWornBefore(worn, Day), WornOut);
        if (WornOut != true)
            return look;
        if (WornOutOn is { } known)
            return look.Since(WornPeriod.DaysWornBefore(worn, known), WornPeriod.DaysWornBefore(worn, known));
        return WornOutSince?.DaysMeant(Day) is { } meant
            ? look.Since(WornPeriod.DaysWornBefore(worn, meant.Earliest), WornPeriod.DaysWornBefore(worn, meant.Latest))
            : look;
    }
}

/// <summary>One look at a unit, as far as it tells of the unit's end.</summary>
/// <param name="WornDays">Worn until then.</param>
/// <param name="WornOut">Null: nobody can say.</param>
public readonly record struct UnitLook(double WornDays, bool? WornOut)
{
    /// <summary>Worn days after which, and by which, it had come to look so; the look itself where nobody remembers.</summary>
    public (double After, double By) Span { get; private init; } = (0, WornDays);

    public UnitLook Since(double after, double by) => this with { Span = (after, by) };
}

/// <summary>The grades of one unit at one look, on its own clock: what the statistics of grades are learnt from.</summary>
/// <param name="WornDays">Days on a head until then.</param>
/// <param name="Grades">As written: blank where nobody looked.</param>
/// <param name="Copied">True: filled in as they were last time; false: a look of its own; null: not asked, as in old records.</param>
/// <param name="Grader">Who wrote them.</param>
public sealed record GradedLook(int WornDays, InspectionGrades Grades, bool? Copied, Guid? Grader);
