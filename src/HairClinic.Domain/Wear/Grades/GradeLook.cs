using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>What one take-down says of how far a unit has worn.</summary>
/// <param name="WornDays">Worn until then.</param>
/// <param name="Slight">A structural item is at grade 1 or worse; null where that was not seen.</param>
/// <param name="Fair">A structural item is at grade 2 or worse; null where that was not seen.</param>
/// <param name="WornOut">A structural item is at grade 3 or worse: the end of the unit's life was found here.</param>
/// <param name="IsCopy">The grades of the time before were entered again with one tap: nobody need have looked.</param>
public readonly record struct GradeLook(double WornDays, bool? Slight, bool? Fair, bool WornOut = false, bool IsCopy = false)
{
    /// <remarks>One item that has worn so far is enough to say so; that none has is known only where all four were looked at.</remarks>
    public static GradeLook FromGrades(double wornDays, InspectionGrades grades, bool isCopy = false) =>
        new(wornDays, grades.IsAtLeast(1), grades.IsAtLeast(2), grades.IsAtLeast(InspectionGrades.PlanReplacement) == true, isCopy);
}
