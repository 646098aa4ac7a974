namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>What a survival analysis is made from, read out of a table.</summary>
/// <param name="Group">Names of the groups and each row's; null where there are none.</param>
/// <param name="Columns">The model's covariates: numbers as they are, text as one column a level but the first.</param>
/// <param name="Clients">Whose each row is; empty where clients are not told apart.</param>
public sealed record SurvivalInput(
    Spell[] Spells,
    (string[] Names, int[] Of)? Group,
    IReadOnlyList<CovariateColumn> Columns,
    IReadOnlyList<CovariateColumn> GroupColumns,
    int[] Clients
)
{
    public static SurvivalInput Read(CsvTable table, SurvivalColumns names)
    {
        var weights = names.Weight is { } w ? Weights(table.Column(w)) : null;
        var spells = names.Lower is { } lower
            ? Intervals(table.Column(lower), table.Column(names.Upper!), weights)
            : Times(table.Column(names.Time!), table.Column(names.Event!), weights);
        var group = names.Group is { } g ? table.Column(g) : null;
        var groupColumns = group is null ? [] : Covariate(group).ToList();
        // A group alone is what the model compares; covariates that are named are all there are.
        var columns = names.Covariates.Count > 0 ? names.Covariates.SelectMany(c => Varying(table.Column(c))).ToList() : groupColumns;
        var clients = names.Client is { } client ? table.Column(client).Levels().Of : [];
        return new SurvivalInput(spells, group?.Levels(), columns, groupColumns, clients);
    }

    private static List<CovariateColumn> Varying(CsvColumn column) =>
        Covariate(column).ToList() is { Count: > 0 } columns
            ? columns
            : throw new Refusal("The column \"{0}\" says the same on every line: its effect cannot be told.", column.Name);

    private static IEnumerable<CovariateColumn> Covariate(CsvColumn column)
    {
        if (!column.EnsureFilled().IsText)
        {
            yield return new CovariateColumn(column.Name, column.Numbers());
            yield break;
        }
        var (names, of) = column.Levels();
        for (var level = 1; level < names.Length; level++)
            yield return new CovariateColumn(column.Name + names[level], [.. of.Select(l => l == level ? 1.0 : 0)]);
    }

    private static double[] Weights(CsvColumn column)
    {
        var weights = column.Numbers();
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] < 0)
                throw column.InvalidCell(i, "below 0, as no weight can be");
        }
        return weights;
    }

    private static Spell[] Times(CsvColumn time, CsvColumn ended, double[]? weights)
    {
        var (times, flags) = (time.EnsureFilled().Numbers(), ended.Flags());
        var spells = new Spell[times.Length];
        for (var i = 0; i < times.Length; i++)
        {
            if (times[i] <= 0)
                throw time.InvalidCell(i, "not above 0, as a time must be");
            spells[i] = flags[i] ? Spell.Exact(times[i], weights?[i] ?? 1) : Spell.RightCensored(times[i], weights?[i] ?? 1);
        }
        return spells;
    }

    private static Spell[] Intervals(CsvColumn lower, CsvColumn upper, double[]? weights)
    {
        var spells = new Spell[lower.Cells.Length];
        for (var i = 0; i < spells.Length; i++)
        {
            var weight = weights?[i] ?? 1;
            spells[i] = (lower.NumberAt(i), upper.NumberAt(i)) switch
            {
                (null, null) => throw new Refusal(
                    "Line {0}: neither \"{1}\" nor \"{2}\" has a value.",
                    lower.Lines[i],
                    lower.Name,
                    upper.Name
                ),
                (< 0, _) => throw lower.InvalidCell(i, "below 0, as no time can be"),
                (_, <= 0) => throw upper.InvalidCell(i, "not above 0, as a time must be"),
                (0, null) => throw lower.InvalidCell(i, "not above 0, as a time it went on to must be"),
                ({ } from, { } to) when from > to => throw lower.InvalidCell(i, $"later than \"{upper.Name}\""),
                (var from, null) => Spell.RightCensored(from!.Value, weight),
                (var from, var to) => Spell.FromBounds(from ?? 0, to.Value, weight),
            };
        }
        return spells;
    }
}

/// <summary>Which columns of the table say what.</summary>
public sealed record SurvivalColumns(
    string? Time,
    string? Event,
    string? Lower,
    string? Upper,
    string? Weight,
    string? Group,
    string? Client,
    IReadOnlyList<string> Covariates
)
{
    /// <exception cref="Refusal">It is not said where the times are, or in both ways.</exception>
    public SurvivalColumns EnsureValid()
    {
        var exact = Time is not null || Event is not null;
        var within = Lower is not null || Upper is not null;
        if (exact && within)
            throw new Refusal("Say either --time and --event, or --lower and --upper.");
        if (within ? Lower is null || Upper is null : Time is null || Event is null)
            throw new Refusal("Say where the times are: --time and --event, or --lower and --upper.");
        var twice = Covariates.GroupBy(c => c).FirstOrDefault(g => g.Count() > 1);
        return twice is null ? this : throw new Refusal("The covariate \"{0}\" is named twice.", twice.Key);
    }
}
