namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>What a survival analysis is made from, read out of a table.</summary>
/// <param name="Group">Names of the groups and each row's; null where there are none.</param>
/// <param name="Columns">The model's covariates: numbers as they are, kinds as one column each but the first.</param>
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
        names.EnsureFactorsAreRead(table);
        var weights = names.Weight is { } w ? Weights(table.Column(w)) : null;
        var spells = names.Lower is { } lower
            ? Intervals(table.Column(lower), table.Column(names.Upper!), weights)
            : Times(table.Column(names.Time!), table.Column(names.Event!), weights);
        var group = names.Group is { } g ? Grouping.Read(table.Column(g), names.Factors.Contains(g)) : null;
        // A group alone is what the model compares; covariates that are named are all there are.
        var columns = names.Covariates.Count == 0 ? group?.Columns ?? [] : [.. names.Covariates.SelectMany(c => Varying(Covariate(c)))];
        if (
            columns.Select(c => c.Name).Append(LifetimeFit.InterceptName).GroupBy(name => name).FirstOrDefault(n => n.Count() > 1) is
            { } twice
        )
            throw new Refusal("Two columns of the model would be called \"{0}\".", twice.Key);
        var clients = names.Client is { } client ? table.Column(client).Kinds().Of : [];
        return new SurvivalInput(spells, group?.Levels, columns, group?.Columns ?? [], clients);

        // What is named as the group is the same in the model.
        Grouping Covariate(string name) =>
            name == names.Group ? group! : Grouping.Of(table.Column(name), areKinds: names.Factors.Contains(name));
    }

    private static IReadOnlyList<CovariateColumn> Varying(Grouping column) =>
        column.Columns is { Count: > 0 } columns
            ? columns
            : throw new Refusal("The column \"{0}\" says the same on every line: its effect cannot be told.", column.Name);

    private static double[] Weights(CsvColumn column)
    {
        var weights = column.Numbers(NumberSize.Weight);
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] < 0)
                throw column.InvalidCell(i, "below 0, as no weight can be");
        }
        return weights;
    }

    private static Spell[] Times(CsvColumn time, CsvColumn ended, double[]? weights)
    {
        var (times, flags) = (time.Numbers(NumberSize.Time), ended.Flags());
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
            spells[i] = (lower.NumberAt(i, NumberSize.Time), upper.NumberAt(i, NumberSize.Time)) switch
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
