using HairClinic.Domain.Visits;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>What one take-down saw of the unit that is asked about.</summary>
/// <param name="WornDays">Worn until then, above 0 and no more than its age.</param>
/// <param name="Grades">None of them says that it is worn out.</param>
public sealed record GradedDay(double WornDays, InspectionGrades Grades);

/// <summary>Grades of take-downs, from a file and from the command line.</summary>
public static class GradeInput
{
    private static readonly string[] Items = ["shedding", "knots", "base", "fit"];

    /// <returns>In order of their days.</returns>
    /// <exception cref="Refusal">A day or a grade makes no sense, a day is said twice, or the unit was worn out.</exception>
    public static IReadOnlyList<GradedDay> Read(string? file, IEnumerable<string> words, double age)
    {
        var days = (file is null ? [] : FromTable(CsvTable.Read(file), age))
            .Concat(words.Select(word => FromWord(word, age)))
            .OrderBy(day => day.WornDays)
            .ToList();
        for (var i = 1; i < days.Count; i++)
        {
            if (days[i].WornDays == days[i - 1].WornDays)
                throw new Refusal("Grades of day {0} are given twice.", days[i].WornDays);
        }
        return days;
    }

    private static IEnumerable<GradedDay> FromTable(CsvTable table, double age)
    {
        var day = table.Column("day");
        var worn = day.Numbers(NumberSize.Any);
        var columns = Array.ConvertAll(Items, table.Column);
        for (var row = 0; row < worn.Length; row++)
        {
            var seen = Array.ConvertAll(columns, column => Grade(column.Cells[row], why => column.InvalidCell(row, why)));
            yield return Checked(worn[row], seen, age, (sentence, more) => new Refusal("Line {0}: " + sentence, [day.Lines[row], .. more]));
        }
    }

    private static GradedDay FromWord(string word, double age)
    {
        var parts = word.Split(':');
        if (parts.Length != 2 || parts[1].Split(',') is not { Length: 4 } cells)
            throw new Refusal("--grade is \"{0}\", which is not DAY:shedding,knots,base,fit, as in 120:1,0,2,1.", word);
        var worn = AnalyseOutput.ParseNumber("The day of --grade", parts[0]);
        var seen = cells
            .Select(cell => Grade(cell.Trim(), why => new Refusal("--grade {0}: \"{1}\" is {2}.", word, cell.Trim(), why)))
            .ToArray();
        return Checked(worn, seen, age, (sentence, more) => new Refusal("--grade {0}: " + sentence, [word, .. more]));
    }

    private static int? Grade(string cell, Func<string, Refusal> refuse)
    {
        if (CsvColumn.IsEmptyCell(cell))
            return null;
        return NumberWord.Parse(cell) is { } grade and (0 or 1 or 2 or 3 or 4)
            ? (int)grade
            : throw refuse("no grade: they run from 0, as new, to 4, unfit, and are empty where nobody looked");
    }

    private static GradedDay Checked(double worn, int?[] seen, double age, Func<string, object[], Refusal> refuse)
    {
        if (!(worn > 0))
            throw refuse("its day is {1}: worn days until a take-down are above 0.", [worn]);
        if (worn > age)
            throw refuse("day {1} lies after the --age of {2} days.", [worn, age]);
        var grades = InspectionGrades.NotLookedAt with { Shedding = seen[0], Knots = seen[1], Base = seen[2], Fit = seen[3] };
        return grades.WorstStructural >= InspectionGrades.PlanReplacement
            ? throw refuse("grade {1} means that the unit was worn out on day {2}: nothing remains.", [grades.WorstStructural, worn])
            : new GradedDay(worn, grades);
    }
}
