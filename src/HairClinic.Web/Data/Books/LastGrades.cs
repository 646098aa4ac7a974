namespace HairClinic.Web.Data.Books;

/// <summary>What was written of a unit before: each item as it was graded last.</summary>
/// <param name="On">The day on which anything was graded last.</param>
public sealed record LastGrades(InspectionGrades Grades, LocalDate On)
{
    /// <returns>Null where nothing was graded yet: nobody looks at a unit that came off at home and was lost.</returns>
    public static LastGrades? From(IEnumerable<WrittenGrades> written, DateTimeZone zone)
    {
        var looks = written.Where(w => w.Grades.AnyGiven).OrderBy(w => w.At).ToList();
        return looks.Count == 0
            ? null
            : new(looks.Aggregate(InspectionGrades.NotLookedAt, (known, w) => w.Grades.OrAsBefore(known)), looks[^1].At.InZone(zone).Date);
    }
}

/// <summary>The grades of one take-down.</summary>
public sealed record WrittenGrades(int? Shedding, int? Knots, int? Base, int? Fit, int? Hair, int? Colour, Instant At)
{
    public InspectionGrades Grades => new(Shedding, Knots, Base, Fit, Hair, Colour);
}
