namespace HairClinic.Web.Learning;

/// <summary>What is believed of hold or of life: the stored fit where there is one, else what the practice's rows assume.</summary>
public sealed class WearModel
{
    private readonly Dictionary<string, int> _places = [];
    private readonly IReadOnlyDictionary<WearHabit, double> _factors;

    /// <param name="factors">The practice's factor rows of this quantity.</param>
    public WearModel(StoredFit? fit, IReadOnlyDictionary<WearHabit, double> factors)
    {
        Fit = fit is { Converged: true } ? fit : null;
        _factors = factors;
        Population = Fit?.Population() ?? LifePopulation.Unseen(WindowPrior.Any(LifeDistribution.Weibull));
        for (var i = 0; i < (Fit?.Columns.Length ?? 0); i++)
            _places[Fit!.Columns[i]] = i;
    }

    /// <summary>Null before anything was learnt.</summary>
    public StoredFit? Fit { get; }

    public LifePopulation Population { get; }

    /// <summary>xᵀβ. What the fit did not know counts as the practice's factor row has it, or not at all.</summary>
    public double Effect(IEnumerable<WearCovariate> columns) => columns.Sum(c => c.Value * Coefficient(c.Name));

    public double Coefficient(string column) =>
        _places.TryGetValue(column, out var place) ? Population.Coefficients[place]
        : WearCovariate.HabitOf(column) is { } habit && _factors.TryGetValue(habit, out var factor) ? Math.Log(factor)
        : 0;

    /// <summary>What is believed of one client, whatever window is asked about.</summary>
    /// <param name="own">The client's own spells.</param>
    public LifeNodes NodesFor(IReadOnlyCollection<WearSpell> own) => NodesFor(Population, own);

    /// <summary>As <see cref="NodesFor(IReadOnlyCollection{WearSpell})"/>, under another value of what all clients share.</summary>
    public LifeNodes NodesFor(LifePopulation population, IReadOnlyCollection<WearSpell> own)
    {
        // The columns' effect is settled by the fit: it stands in the place, so that nothing but b is left to learn.
        var usable = own.Where(s => s.Window is not null).SelectMany(s => s.Rows.Select(row => (row, s.Window!.Value.Place))).ToList();
        var places = usable.Select(t => t.Place with { Offset = t.Place.Offset + Effect(t.row.Columns) }).ToArray();
        var rows = LifeRows.Create(
            [.. usable.Select(t => t.row.Spell)],
            [],
            places,
            new int[usable.Count],
            usable.Exists(t => t.row.Entered > 0) ? [.. usable.Select(t => t.row.Entered)] : []
        );
        return usable.Count == 0 ? LifeNodes.For(population) : LifeNodes.For(population with { Coefficients = [] }, rows);
    }

    /// <summary>What to expect of a bond or unit with such a window.</summary>
    public LifePrediction Predict(LifeNodes client, WindowPrior window, IEnumerable<WearCovariate> columns) =>
        new(Population, client, window.Place, Effect(columns));
}
