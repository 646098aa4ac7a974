namespace HairClinic.Web.Features.Lasting;

/// <summary>What the nightly fit says beside the curves, and what it rests on.</summary>
/// <param name="DataCut">Null before there was any fit.</param>
/// <param name="Converged">Whether the newest fit reached an estimate; where it did not, the effects are of the one before.</param>
public sealed record LifetimeFitSummary(
    LocalDate? DataCut,
    int ModelVersion,
    int Spells,
    int Ended,
    int Clients,
    bool Converged,
    IReadOnlyList<LifetimeFitNote> Notes,
    IReadOnlyList<LifetimeFitSummary.Effect> Effects
)
{
    /// <summary>The last day whose records are in what is shown; null where no fit reached an estimate.</summary>
    public LocalDate? ShownUpTo { get; init; }

    /// <summary>Records left out until somebody says whether their dates are right.</summary>
    public int LeftOut { get; init; }

    public static readonly LifetimeFitSummary None = new(null, StoredFit.CurrentModel, 0, 0, 0, false, [], []);

    /// <param name="Factor">Multiplies the time to be expected.</param>
    /// <param name="Low">With <paramref name="High"/> the 80 % band.</param>
    public readonly record struct Effect(string Name, double Factor, double Low, double High);

    /// <param name="newest">The last that was made.</param>
    /// <param name="estimated">The last that reached an estimate; null where none did.</param>
    /// <param name="names">What columns are called; a column not among them is not shown.</param>
    /// <param name="shown">The beginnings of the columns to show.</param>
    public static LifetimeFitSummary Of(
        StoredFit? newest,
        StoredFit? estimated,
        IReadOnlyDictionary<string, string> names,
        IReadOnlyCollection<string> shown
    ) =>
        newest is null
            ? None
            : new(
                newest.DataCut,
                newest.ModelVersion,
                newest.Spells,
                newest.Ended,
                newest.Clients,
                newest.Converged,
                [.. newest.Notes.Select(n => n.Argument is { } a && names.TryGetValue(a, out var name) ? n with { Argument = name } : n)],
                estimated is null ? [] : [.. EffectsOf(estimated, names, shown).OrderBy(e => e.Factor)]
            )
            {
                ShownUpTo = estimated?.DataCut,
                LeftOut = newest.LeftOut ?? 0,
            };

    private static IEnumerable<Effect> EffectsOf(
        StoredFit fit,
        IReadOnlyDictionary<string, string> names,
        IReadOnlyCollection<string> shown
    ) =>
        from place in Enumerable.Range(0, fit.Columns.Length)
        let column = fit.Columns[place]
        where shown.Any(s => column.StartsWith(s, StringComparison.Ordinal)) && names.ContainsKey(column)
        let at = fit.Coefficients[place + 1]
        let reach = ZScores.EightyPercent * fit.StdError(place + 1)
        select new Effect(names[column], Math.Exp(at), Math.Exp(at - reach), Math.Exp(at + reach));
}
