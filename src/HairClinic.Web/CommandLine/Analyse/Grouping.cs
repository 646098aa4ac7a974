namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A column as the groups that curves are drawn of, and as the model's covariates.</summary>
/// <param name="Levels">The groups' names, and each row's.</param>
/// <param name="Columns">One of its numbers, or one for each kind but the first.</param>
public sealed record Grouping(string Name, (string[] Names, int[] Of) Levels, IReadOnlyList<CovariateColumn> Columns)
{
    /// <summary>What is named as the group. All numbers are numbers in the model and all words kinds; a mixture is not decided by us.</summary>
    /// <exception cref="Refusal">A cell is empty, or some cells are numbers and some are none.</exception>
    public static Grouping Read(CsvColumn column, bool isFactor) =>
        Of(column, isFactor || !Array.Exists(column.EnsureFilled().Cells, cell => NumberWord.Parse(cell) is not null));

    /// <exception cref="Refusal">A cell is empty; of numbers, one is none.</exception>
    public static Grouping Of(CsvColumn column, bool areKinds)
    {
        if (!areKinds)
        {
            var numbers = column.Numbers(NumberSize.Covariate, mayNameKinds: true);
            return new Grouping(column.Name, column.DifferentNumbers(), [new CovariateColumn(column.Name, numbers)]);
        }
        var (names, of) = column.Kinds();
        return new Grouping(
            column.Name,
            (names, of),
            [
                .. names
                    .Select((name, level) => new CovariateColumn(column.Name + name, Array.ConvertAll(of, l => l == level ? 1.0 : 0)))
                    .Skip(1),
            ]
        );
    }
}
