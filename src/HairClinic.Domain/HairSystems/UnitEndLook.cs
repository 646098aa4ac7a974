using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.HairSystems;

/// <summary>What whoever retired a unit said of how it looked. They were asked; what they left open stays unknown.</summary>
/// <param name="By">Who looked.</param>
public sealed record UnitEndLook(UnitCondition Condition, Guid? By)
{
    /// <summary>Blank where nobody looked.</summary>
    public InspectionGrades Grades { get; init; } = InspectionGrades.NotLookedAt;

    /// <summary>The grades were filled in as they were last time, and none was changed; null where nothing was graded.</summary>
    public bool? GradesCopied { get; init; }

    /// <summary>Of one that is worn out: the first day on which it looked so, where somebody knows.</summary>
    public LocalDate? WornOutOn { get; init; }

    /// <summary>And if not, about when, as it was said on the day it was retired.</summary>
    public SinceWhen? WornOutSince { get; init; }

    /// <param name="retiredOn">The day of the step.</param>
    /// <exception cref="Refusal">Condition and grades contradict each other, a grade lies outside 0–4, or a day has not come.</exception>
    public UnitEndLook EnsureValid(LocalDate retiredOn)
    {
        WornOutOn?.RequireReached(retiredOn, nameof(WornOutOn));
        return (Condition, Grades.EnsureValid().IsAtLeast(InspectionGrades.PlanReplacement)) switch
        {
            (UnitCondition.WornOut, false) => throw new Refusal(
                "Worn out means 3 or 4 for shedding, knots, base or fit. Change a grade, or say that it still wears."
            )
            {
                Field = "EndCondition",
            },
            (UnitCondition.StillWearable, true) => throw new Refusal(
                "With 3 or 4 for shedding, knots, base or fit it is worn out. Change the grade, or say that it is worn out."
            )
            {
                Field = "EndCondition",
            },
            _ => this,
        };
    }

    public UnitInspection ToInspection(LocalDate retiredOn) =>
        new(retiredOn, Grades)
        {
            Copied = GradesCopied,
            Grader = By,
            SaidWornOut = Condition switch
            {
                UnitCondition.WornOut => true,
                UnitCondition.StillWearable => false,
                _ => null,
            },
            WornOutOn = WornOutOn,
            WornOutSince = WornOutSince,
        };
}

/// <summary>How a unit is as it is retired.</summary>
public enum UnitCondition
{
    NotSaid,
    WornOut,
    StillWearable,
}
