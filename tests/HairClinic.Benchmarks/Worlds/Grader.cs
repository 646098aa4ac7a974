using HairClinic.Domain.Visits;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What is written of a unit that was taken down.</summary>
/// <remarks>
/// Honest: nothing in one take-down of five; of the rest 15 % are a copy of the last entry and 15 % off by one, up or down. Whoever puts a
/// unit back on writes no grade that ends it, and whoever retires one because it is worn out writes 3 or more, or nothing: what is done
/// with it is never wrong, whatever is written.
/// </remarks>
internal sealed class Grader(GradeMode mode)
{
    private const double Absent = 0.2;
    private const double Wrong = 0.3;
    private const int MostOfSound = InspectionGrades.PlanReplacement - 1;

    public InspectionGrades Write(UnitTruth unit, int worn, bool wornOut)
    {
        var dice = unit.Entries;
        var (absent, wrong, copied, up) = (dice.Chance(Absent), dice.Chance(Wrong), dice.Chance(0.5), dice.Chance(0.5));
        var random = new[] { dice.Whole(0, 2), dice.Whole(0, 2), dice.Whole(0, 2), dice.Whole(0, 2) };
        var last = unit.Record.Looks.FindLast(look => look.Grades.WorstStructural is not null)?.Grades;
        if (mode != GradeMode.Honest)
        {
            return wornOut ? InspectionGrades.NotLookedAt
                : mode == GradeMode.Random ? Of(random)
                : mode == GradeMode.Zero ? InspectionGrades.AsNew
                : last ?? Of(unit.Grades(worn));
        }
        if (absent)
            return InspectionGrades.NotLookedAt;
        var seen = unit.Grades(worn);
        if (wornOut || !wrong)
            return Of(seen);
        return copied && last is not null ? last : Of(Array.ConvertAll(seen, grade => Math.Clamp(grade + (up ? 1 : -1), 0, MostOfSound)));
    }

    private static InspectionGrades Of(int[] items) => new(items[0], items[1], items[2], items[3], 0, 0);
}

internal enum GradeMode
{
    Honest,
    Random,
    Zero,
    Copied,
}
