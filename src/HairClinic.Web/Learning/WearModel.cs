using System.Collections.Concurrent;
using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>The model of hold or of life: the stored fit where there is one, else what the practice's rows assume.</summary>
public sealed class WearModel
{
    private readonly Dictionary<string, int> _places = [];
    private readonly ConcurrentDictionary<(double Sigma, int Slope, UnitCourses Courses, bool Repaired), LifeShape> _shapes = new();
    private readonly ConcurrentDictionary<WindowPrior, GradeCurveBuilder> _grades = new();
    private readonly GradeLink? _link;
    private readonly IReadOnlyDictionary<KnownCovariate, double> _factors;

    /// <param name="factors">The practice's factor rows of this quantity.</param>
    public WearModel(StoredFit? fit, IReadOnlyDictionary<KnownCovariate, double> factors)
    {
        Fit = fit is { Converged: true } ? fit : null;
        _link = Fit?.GradeLink;
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
        : CovariateValue.IsUsualUntilTold(column) ? 0
        : CovariateValue.PriorOf(column, _factors).Mean;

    /// <summary>The population as far as it is known for bonds or units with such a window and covariates.</summary>
    /// <remarks>What the fit never saw, such as a new adhesive, is as uncertain as its prior has it; without a fit the window's row is taken at its word.</remarks>
    public PopulationParameters PopulationFor(WindowPrior window, IEnumerable<CovariateValue> columns)
    {
        if (Fit is null)
            return Population;
        var (values, unseen) = (new double[Population.Coefficients.Count], 0.0);
        foreach (var column in columns)
        {
            if (_places.TryGetValue(column.Name, out var place))
                values[place] += column.Value;
            else if (!CovariateValue.IsUsualUntilTold(column.Name))
                unseen += Math.Pow(column.Value * SpreadOfUnseen(column.Name), 2);
        }
        return Population.ForRow(window.Width, values, unseen);
    }

    private double SpreadOfUnseen(string column) =>
        Fit is { } fit && CovariateValue.IsBaseOrWorkshop(column) ? fit.EffectSpread : CovariateValue.PriorOf(column, _factors).Spread;

    /// <summary>The model of one client, for bonds or units with such a window and covariates.</summary>
    /// <param name="own">The client's own spells.</param>
    public ClientEffectNodes ClientEffect(IReadOnlyCollection<WearSpell> own, WindowPrior window, IEnumerable<CovariateValue> columns) =>
        ClientEffect(PopulationFor(window, columns), own);

    /// <summary>As <see cref="ClientEffect(IReadOnlyCollection{WearSpell},WindowPrior,IEnumerable{CovariateValue})"/>, under another value of what all clients share.</summary>
    public ClientEffectNodes ClientEffect(PopulationParameters population, IReadOnlyCollection<WearSpell> own)
    {
        // The columns' effect is settled by the fit: it stands in the place, so that nothing but b is left to learn.
        var usable = own.Where(s => s.Window is not null).ToList();
        if (usable.Count == 0)
            return ClientEffectNodes.For(population);
        double[] duds = Fit is null ? [] : [.. usable.Select(s => s.DudKind is { } kind ? Fit.CoursesOf(kind).DudShare : 0)];
        var rows = LifetimeFitRows.Create(
            [.. usable.Select(s => s.SpellAt(RepairRate))],
            [],
            [.. usable.Select(s => s.Window!.Value.Place with { Offset = s.Window.Value.Place.Offset + Effects(s.Columns) })],
            new int[usable.Count],
            dudShares: Array.TrueForAll(duds, share => share == 0) ? [] : duds,
            dudDrop: Fit?.DudDrop
        );
        return ClientEffectNodes.For(population with { Coefficients = [] }, rows);
    }

    /// <summary>What to expect of a client's bond with such a window and covariates.</summary>
    /// <param name="own">The client's own spells; none for a client of whom nothing is known.</param>
    public LifePrediction Predict(IReadOnlyCollection<WearSpell> own, WindowPrior window, IReadOnlyCollection<CovariateValue> columns)
    {
        var population = PopulationFor(window, columns);
        return new(population, ClientEffect(population, own), window.Place, Effects(columns));
    }

    /// <summary>What to expect of a client's unit.</summary>
    /// <param name="repairedAt">Worn days at its first repair; null where it was never repaired.</param>
    public LifePrediction PredictUnit(
        IReadOnlyCollection<WearSpell> own,
        UnitKindTerms kind,
        IReadOnlyCollection<CovariateValue> columns,
        double? repairedAt
    )
    {
        var window = kind.LifePrior();
        var population = PopulationFor(window, columns);
        var client = ClientEffect(population, own);
        return ShapeOf(population, kind.Id, window, repairedAt is not null) is { } shape
            ? new(population, client, window.Place, Effects(columns), shape, ClockOf(repairedAt))
            : new(population, client, window.Place, Effects(columns));
    }

    /// <summary>κ where nothing is learnt yet: the practice's row says how long, in times, what is left of a repaired unit lasts.</summary>
    public static double RepairRateFrom(IReadOnlyDictionary<KnownCovariate, double> factors) =>
        factors.TryGetValue(KnownCovariate.Repaired, out var factor) ? -Math.Log(factor) : 0;

    public RepairClock ClockOf(double? repairedAt) => repairedAt is { } at ? new RepairClock(at, RepairRate) : default;

    /// <summary>κ.</summary>
    public double RepairRate => Fit?.RepairRate ?? RepairRateFrom(_factors);

    /// <summary>
    /// What the grades of a unit in wear say of its end; null where the practice's grades do not tell, where none says anything, and after a
    /// repair: what is mended was not worn.
    /// </summary>
    /// <param name="life">Null for a unit that was never worn.</param>
    /// <param name="wornDays">Until today.</param>
    public GradeWeights? GradesOf(LifeSpell? life, int wornDays)
    {
        if (life is not { Window: { } window, RepairedAt: null, WornOut: false } || _link is not { } link)
            return null;
        var grades = life.StructuralGrades;
        return grades.Looks == 0
            ? null
            : new GradeWeights(_grades.GetOrAdd(window, w => new GradeCurveBuilder(link, w)).Build(grades), wornDays);
    }

    /// <summary>What may befall a spell's unit, and its clock; null for a bond, and where nothing is known to.</summary>
    public (LifeShape Shape, RepairClock Clock)? CourseOf(WearSpell spell) =>
        spell is LifeSpell { Window: { } window } unit
        && ShapeOf(Population, unit.UnitKindId, window, unit.RepairedAt is not null) is { } shape
            ? (shape, ClockOf(unit.RepairedAt))
            : null;

    /// <summary>How ln T of a unit lies about its centre: over what is not known of the scale, duds, and repairs to come. Null without a fit.</summary>
    public LifeShape? ShapeOf(PopulationParameters population, Guid unitKindId, WindowPrior window, bool wasRepaired)
    {
        var courses = Fit?.CoursesOf(unitKindId) ?? default;
        if (Fit is null && !(wasRepaired && RepairRate != 0))
            return null;
        // A centre's own move with the scale is rounded to a hundredth of ln T, so that a practice's units share a few tables.
        var slope = (int)Math.Round(100 * window.Width * population.LogScaleSlope * Math.Sqrt(population.LogScaleVariance));
        return _shapes.GetOrAdd(
            (window.Sigma, slope, courses, wasRepaired),
            key =>
                LifeShape.Create(
                    population.Distribution,
                    [.. key.Courses.Apply(LifePrediction.BranchesOfScale(population, key.Sigma, key.Slope / 100.0), key.Repaired)]
                )
        );
    }
}

/// <summary>The practice's two models, of hold and of life, as they stand.</summary>
public sealed record WearModelPair(WearModel Hold, WearModel Life)
{
    /// <summary>What predictions of holds stand on while the newest recalculation of them found no answer; else null.</summary>
    public ModelBasis? HoldBasis { get; private init; }

    /// <summary>The bonds that an alarm of the watch named.</summary>
    public IReadOnlyCollection<WatchedCohort> HoldCohorts { get; private init; } = [];

    /// <summary>As <see cref="HoldBasis"/>, of lives.</summary>
    public ModelBasis? LifeBasis { get; private init; }

    /// <summary>Both, as far as there is something to say.</summary>
    public IReadOnlyList<ModelBasis> Bases => [.. new[] { HoldBasis, LifeBasis }.OfType<ModelBasis>()];

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
                Hold = UsableFits(db, LifetimeKind.Hold).Where(f => f.PracticeId == s.PracticeId).FirstOrDefault(),
                Life = UsableFits(db, LifetimeKind.Life).Where(f => f.PracticeId == s.PracticeId).FirstOrDefault(),
                HoldUnanswered = FitsWithoutAnswer(db, LifetimeKind.Hold).Where(f => f.PracticeId == s.PracticeId).FirstOrDefault(),
                LifeUnanswered = FitsWithoutAnswer(db, LifetimeKind.Life).Where(f => f.PracticeId == s.PracticeId).FirstOrDefault(),
                Prepared = db.StoredPreparations.FirstOrDefault(p => p.PracticeId == s.PracticeId),
                HoldCohorts = WatchCohorts.BondAlarms(db).Where(a => a.PracticeId == s.PracticeId).Select(WatchCohorts.FromAlarm).ToList(),
            })
            .SingleAsync(cancellation);
        var factors = await LoadWearFactorsAsync(db, cancellation);
        return (
            head.Settings,
            new(
                new WearModel(head.Hold, FactorsByHabit(factors, LifetimeKind.Hold)),
                new WearModel(head.Life, FactorsByHabit(factors, LifetimeKind.Life))
            )
            {
                HoldBasis = ModelBasis.Of(head.Hold, head.HoldUnanswered),
                LifeBasis = ModelBasis.Of(head.Life, head.LifeUnanswered),
                HoldCohorts = head.HoldCohorts,
            },
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

    /// <summary>Those of today's model that found no answer, the newest first.</summary>
    public static IQueryable<StoredFit> FitsWithoutAnswer(ClinicDb db, LifetimeKind quantity) =>
        db
            .StoredFits.AsNoTracking()
            .Where(f => f.Quantity == quantity && f.ModelVersion == StoredFit.CurrentModel && !f.Converged)
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
