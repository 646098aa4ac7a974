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

    /// <summary>Whether its structure (shedding, knots, base and fit) is at that grade or beyond.</summary>
    /// <returns>One item says yes; only all four say no. Null: what was not looked at may be worse.</returns>
    public bool? IsAtLeast(int grade) =>
        Structural.Any(g => g >= grade) ? true
        : Structural.All(g => g < grade) ? false
        : null;

    /// <summary>The worst of the items that end a unit's life; null where one that was not looked at may decide.</summary>
    public int? WorstStructural => IsAtLeast(PlanReplacement) is null ? null : Structural.Max();

    /// <summary>Somebody looked at one item at least.</summary>
    public bool AnyGiven => this != NotLookedAt;

    /// <summary>These, and where one is blank what was found before.</summary>
    public InspectionGrades OrAsBefore(InspectionGrades? before) =>
        before is null
            ? this
            : new(
                Shedding ?? before.Shedding,
                Knots ?? before.Knots,
                Base ?? before.Base,
                Fit ?? before.Fit,
                Hair ?? before.Hair,
                Colour ?? before.Colour
            );

    private int?[] Structural => [Shedding, Knots, Base, Fit];

    /// <exception cref="Refusal">A grade lies outside 0–4.</exception>
    public InspectionGrades EnsureValid() =>
        new[] { Shedding, Knots, Base, Fit, Hair, Colour }.Any(g => g is < 0 or > 4)
            ? throw new Refusal("Grades run from 0, as new, to 4, unfit.")
            : this;
}
