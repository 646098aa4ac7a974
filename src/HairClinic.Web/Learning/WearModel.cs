using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>The model of hold or of life: the stored fit where there is one, else what the practice's rows assume.</summary>
public sealed class WearModel
{
    private readonly Dictionary<string, int> _places = [];
    private readonly IReadOnlyDictionary<KnownCovariate, double> _factors;

    /// <param name="factors">The practice's factor rows of this quantity.</param>
    public WearModel(StoredFit? fit, IReadOnlyDictionary<KnownCovariate, double> factors)
    {
        Fit = fit is { Converged: true } ? fit : null;
        _factors = factors;
        Population = Fit?.Population() ?? PopulationParameters.FromPriors(WindowPrior.ForAnyWindow(LifeDistribution.Weibull));
        for (var i = 0; i < (Fit?.Columns.Length ?? 0); i++)
            _places[Fit!.Columns[i]] = i;
    }

    /// <summary>Null before anything was learnt.</summary>
    public StoredFit? Fit { get; }

    public PopulationParameters Population { get; }

    /// <summary>xᵀβ. What the fit did not know counts as the practice's factor row has it, or not at all.</summary>
    public double Effects(IEnumerable<CovariateValue> columns) => columns.Sum(c => c.Value * Coefficient(c.Name));

    public double Coefficient(string column) =>
        _places.TryGetValue(column, out var place) ? Population.Coefficients[place]
        : CovariateValue.ParseHabit(column) is { } habit && _factors.TryGetValue(habit, out var factor) ? Math.Log(factor)
        : 0;

    /// <summary>The model of one client, for any window.</summary>
    /// <param name="own">The client's own spells.</param>
    public ClientEffectNodes ClientEffect(IReadOnlyCollection<WearSpell> own) => ClientEffect(Population, own);

    /// <summary>As <see cref="ClientEffect(IReadOnlyCollection{WearSpell})"/>, under another value of what all clients share.</summary>
    public ClientEffectNodes ClientEffect(PopulationParameters population, IReadOnlyCollection<WearSpell> own)
    {
        // The columns' effect is settled by the fit: it stands in the place, so that nothing but b is left to learn.
        var usable = own.Where(s => s.Window is not null).SelectMany(s => s.Rows.Select(row => (row, s.Window!.Value.Place))).ToList();
        var places = usable.Select(t => t.Place with { Offset = t.Place.Offset + Effects(t.row.Columns) }).ToArray();
        var rows = LifetimeFitRows.Create(
            [.. usable.Select(t => t.row.Spell)],
            [],
            places,
            new int[usable.Count],
            usable.Exists(t => t.row.Entered > 0) ? [.. usable.Select(t => t.row.Entered)] : []
        );
        return usable.Count == 0 ? ClientEffectNodes.For(population) : ClientEffectNodes.For(population with { Coefficients = [] }, rows);
    }

    /// <summary>What to expect of a bond or unit with such a window.</summary>
    public LifePrediction Predict(ClientEffectNodes client, WindowPrior window, IEnumerable<CovariateValue> columns) =>
        new(Population, client, window.Place, Effects(columns));
}

/// <summary>The practice's two models, of hold and of life, as they stand.</summary>
public sealed record WearModelPair(WearModel Hold, WearModel Life)
{
    public static async Task<WearModelPair> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        (await LoadWithSettingsAsync(db, cancellation)).WearModels;

    /// <summary>The practice's settings, its models, and what is known of preparation, in two round trips.</summary>
    public static async Task<(PracticeSettings Settings, WearModelPair WearModels, StoredPreparation? Prepared)> LoadWithSettingsAsync(
        ClinicDb db,
        CancellationToken cancellation
    )
    {
        var head = await db
            .PracticeSettings.AsNoTracking()
            .Select(s => new
            {
                Settings = s,
                Hold = UsableFits(db, LifetimeKind.Hold).FirstOrDefault(),
                Life = UsableFits(db, LifetimeKind.Life).FirstOrDefault(),
                Prepared = db.StoredPreparations.AsNoTracking().FirstOrDefault(),
            })
            .SingleAsync(cancellation);
        var factors = await LoadWearFactorsAsync(db, cancellation);
        return (
            head.Settings,
            new(
                new WearModel(head.Hold, FactorsByHabit(factors, LifetimeKind.Hold)),
                new WearModel(head.Life, FactorsByHabit(factors, LifetimeKind.Life))
            ),
            head.Prepared
        );
    }

    /// <summary>The fits that count, the newest first: of today's model, with an estimate, from something seen.</summary>
    /// <remarks>A recalculation of an empty book knows of no spread among clients: it would make a client's own bonds count for nothing.</remarks>
    public static IQueryable<StoredFit> UsableFits(ClinicDb db, LifetimeKind quantity) =>
        db
            .StoredFits.AsNoTracking()
            .Where(f => f.Quantity == quantity && f.ModelVersion == StoredFit.CurrentModel && f.Converged && f.Spells > 0)
            .OrderByDescending(f => f.FittedAt);

    /// <summary>The newest fits that left out what nobody would believe, by quantity: what the next ones judge by.</summary>
    public static async Task<Dictionary<LifetimeKind, StoredFit>> LoadCheckedFitsAsync(ClinicDb db, CancellationToken cancellation) =>
        (
            await UsableFits(db, LifetimeKind.Hold)
                .Where(f => f.LeftOut != null)
                .Take(1)
                .Concat(UsableFits(db, LifetimeKind.Life).Where(f => f.LeftOut != null).Take(1))
                .ToListAsync(cancellation)
        ).ToDictionary(f => f.Quantity);

    /// <summary>Staff and jobs read the factor rows; a client's own page does without.</summary>
    public static Task<List<WearFactor>> LoadWearFactorsAsync(ClinicDb db, CancellationToken cancellation) =>
        db.WearFactors.AsNoTracking().ToListAsync(cancellation);

    public static Dictionary<KnownCovariate, double> FactorsByHabit(IEnumerable<WearFactor> factors, LifetimeKind quantity) =>
        factors.Where(f => f.Quantity == quantity).ToDictionary(f => f.Habit, f => f.Factor);
}
