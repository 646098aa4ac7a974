namespace HairClinic.Domain.Visits;

/// <summary>
/// What the take-down inspection saw, each 0–4: 0 as new, 1 slight, 2 fair, 3 plan its replacement, 4 unfit.
/// The scale is common practice, no source. Null: not looked at.
/// </summary>
/// <param name="Shedding">Hair lost from the front and top.</param>
/// <param name="Knots">Loose knots, rising tails, return hair.</param>
/// <param name="Base">Tears, runs, stretch, yellowing.</param>
/// <param name="Fit">Gaps, ripples, shrinkage.</param>
/// <param name="Hair">Dry, brittle, tangled.</param>
/// <param name="Colour">Red, brassy, patchy.</param>
public sealed record InspectionGrades(int? Shedding, int? Knots, int? Base, int? Fit, int? Hair, int? Colour)
{
    public static readonly InspectionGrades AsNew = new(0, 0, 0, 0, 0, 0);

    public static readonly InspectionGrades NotLookedAt = new(null, null, null, null, null, null);

    /// <summary>From this structural grade on, its replacement is planned.</summary>
    public const int PlanReplacement = 3;

    /// <summary>At this structural grade a unit is bonded only in an emergency.</summary>
    public const int Unfit = 4;

    /// <summary>The worst of the items that end a unit's life: shedding, knots, base and fit.</summary>
    public int? WorstStructural => new[] { Shedding, Knots, Base, Fit }.Max();

    /// <exception cref="Refusal">A grade lies outside 0–4.</exception>
    public InspectionGrades EnsureValid() =>
        new[] { Shedding, Knots, Base, Fit, Hair, Colour }.Any(g => g is < 0 or > 4)
            ? throw new Refusal("Grades run from 0, as new, to 4, unfit.")
            : this;
}
