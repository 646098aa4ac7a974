using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>The practice's side of every next order: settings, salons, kinds, workshops, models. Read once for many clients.</summary>
public sealed partial class ReorderFacts
{
    private readonly PracticeSettings _settings;
    private readonly Dictionary<Guid, Salon> _salons;
    private readonly Dictionary<Guid, OpeningDays> _opening;
    private readonly IReadOnlyDictionary<Guid, Workshop> _workshops;
    private readonly IReadOnlyDictionary<Guid, StoredLead> _leads;
    private readonly Dictionary<LocalDate, LeadTimeForecasts> _orders = [];

    private ReorderFacts(
        PracticeSettings settings,
        IReadOnlyList<Salon> salons,
        IReadOnlyDictionary<Guid, Workshop> workshops,
        IReadOnlyDictionary<Guid, UnitKindTerms> kinds,
        IReadOnlyDictionary<Guid, StoredLead> leads,
        WearModelPair models,
        PreparationTime preparation
    )
    {
        _settings = settings;
        _salons = salons.ToDictionary(s => s.Id);
        _opening = salons.ToDictionary(s => s.Id, DueCalculator.OpeningDaysOf);
        (_workshops, Kinds, _leads, WearModels, Preparation) = (workshops, kinds, leads, models, preparation);
    }

    public PracticeSettings Settings => _settings;

    public IReadOnlyDictionary<Guid, Salon> Salons => _salons;

    public IReadOnlyDictionary<Guid, UnitKindTerms> Kinds { get; }

    public IReadOnlyDictionary<Guid, Workshop> Workshops => _workshops;

    public WearModelPair WearModels { get; }

    /// <summary>From arrival until a unit can be bonded: the practice's setting, or what its own units took.</summary>
    public PreparationTime Preparation { get; }

    /// <summary>Six round trips.</summary>
    public static async Task<ReorderFacts> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var (settings, models, prepared) = await WearModelPair.LoadWithSettingsAsync(db, cancellation);
        return new(
            settings,
            await db.Salons.AsNoTracking().Include(s => s.Hours).Include(s => s.Closures).ToListAsync(cancellation),
            await db.Workshops.AsNoTracking().Include(w => w.Closures).ToDictionaryAsync(w => w.Id, cancellation),
            await LifeSpellBuilder.UnitKindsAsync(db, cancellation),
            await db.StoredLeads.AsNoTracking().ToDictionaryAsync(s => s.UnitKindId, cancellation),
            models,
            prepared?.UnderSetting(settings.PreparationDays) ?? PreparationTime.Fixed(settings.PreparationDays)
        );
    }

    /// <summary>Lead times as seen on a day.</summary>
    public LeadTimeForecasts LeadTimesOn(LocalDate today) =>
        _orders.TryGetValue(today, out var known) ? known : _orders[today] = new LeadTimeForecasts(Kinds, _workshops, _leads, today);

    /// <returns>Null for who has never worn a unit, wears none any more, or is none of the practice's any more.</returns>
    public ClientReorderInput? PrepareReorder(ClientUnits client)
    {
        var today = client.Today;
        if (LapsedClientRule.HasLapsed(client.LastWornOn, today) || client.ToRepeat is not { } repeated)
            return null;
        var orders = LeadTimesOn(today);
        var inHand = client.InHand.ToList();
        var lent = client.Borrowed.Select(b => b.Loan.DaysLeft(today)).Where(days => days > 0).ToList();
        // The soonest expected first.
        var inFlight = client.InFlight.OrderBy(orders.MedianArrival).ToList();
        var next = Kinds[repeated.UnitKindId];
        var nextColumns = client.CovariatesOf(null, next);
        var effect = EffectOf(client, next, nextColumns);
        var left = client.LivesLeft(WearModels.Life, Kinds);
        var question = QuestionOf(
            effect,
            next,
            orders,
            [
                .. inHand.Select(u => InHandOf(client, effect, u, left[u.Id].WornDays, left[u.Id].Life.Grades)),
                .. lent.Select(RemainingLife.OfDays),
            ],
            [
                .. inFlight.Select(u => new UnitOnOrder(
                    InHandOf(client, effect, u, 0),
                    orders.LeadTimeLeft(u),
                    orders.WorkshopDaysOf(u.UnitKindId)
                )),
            ]
        ) with
        {
            Lent = lent.Count,
        };
        return new ClientReorderInput(
            client.ClientId,
            today,
            next.Id,
            question,
            InHandOf(effect, next, nextColumns, 0, repairedAt: null),
            _opening[client.SalonId],
            WearModels.Life.PredictUnit(client.Lives, next, nextColumns, repairedAt: null)
        )
        {
            OnHead = client.OnHead,
            InHand = [.. inHand.Select(u => u.Id)],
            InFlight = [.. inFlight.Select(u => u.Id)],
            Emergency = [.. client.Emergency.Select(u => u.Id)],
            Left = left,
            Lives = client.Lives,
            Effect = effect,
            ColumnsOfNew = nextColumns,
            EffectOfNew = WearModels.Life.Effects(nextColumns),
            WeakerSince = inHand.Concat(inFlight).Max(u => client.WeakerSince(u, Kinds[u.UnitKindId])),
            ForgottenSince = client.MayBeForgotten.Min(u => u.Dates.OrderedOn),
        };
    }

    /// <summary>A unit of a kind that the client would have from now on.</summary>
    public RemainingLife NewUnitOf(ClientUnits client, ClientReorderInput order, Guid unitKindId) =>
        InHandOf(order.Effect, Kinds[unitKindId], client.CovariatesOf(null, Kinds[unitKindId]), 0, repairedAt: null);

    /// <summary>What certainty costs with a kind of unit, for a client of whom nothing is known; the workshop's closures apart.</summary>
    public CertaintyCost CertaintyCostOf(Guid unitKindId, LocalDate today)
    {
        var kind = Kinds[unitKindId];
        var columns = kind.LifeCovariates(delivered: null);
        var population = WearModels.Life.PopulationFor(kind.LifePrior(), columns);
        var effect = new SharedEffect(population, WearModels.Life.ClientEffect(population, []));
        return new(
            new ReorderInput(
                LifeDistribution.Weibull,
                effect.Nodes.Reduced(),
                [],
                [],
                LeadTimesOn(today).LeadTimeOfNew(kind.Id),
                new WorkshopWorkingDays(today, [], LeadTimeForecasts.DaysInSight),
                _settings.PreparationDays
            ),
            InHandOf(effect, kind, columns, 0, repairedAt: null),
            LeadTimeForecasts.DaysInSight
        );
    }

    private SharedEffect EffectOf(ClientUnits client, UnitKindTerms next, IReadOnlyCollection<CovariateValue> columns)
    {
        var population = WearModels.Life.PopulationFor(next.LifePrior(), columns);
        return new(population, WearModels.Life.ClientEffect(population, client.Lives));
    }

    private ReorderInput QuestionOf(
        SharedEffect effect,
        UnitKindTerms next,
        LeadTimeForecasts orders,
        IReadOnlyList<RemainingLife> inHand,
        IReadOnlyList<UnitOnOrder> inFlight
    ) =>
        new(
            LifeDistribution.Weibull,
            effect.Nodes.Reduced(),
            inHand,
            inFlight,
            orders.LeadTimeOfNew(next.Id),
            orders.WorkshopDaysOf(next.Id),
            _settings.PreparationDays
        )
        {
            Alpha = _settings.GapChancePercent / 100.0,
            Spares = next.Spares,
            Preparation = Preparation.IsLearnt ? Preparation : null,
        };

    private RemainingLife InHandOf(ClientUnits client, SharedEffect effect, HairSystem unit, int worn, GradeWeights? grades = null)
    {
        var kind = Kinds[unit.UnitKindId];
        return InHandOf(effect, kind, client.CovariatesOf(unit, kind), worn, client.RepairedAt(unit.Id), grades);
    }

    private RemainingLife InHandOf(
        SharedEffect effect,
        UnitKindTerms kind,
        IReadOnlyList<CovariateValue> columns,
        int worn,
        double? repairedAt,
        GradeWeights? grades = null
    )
    {
        var (model, window) = (WearModels.Life, kind.LifePrior());
        var row = model.PopulationFor(window, columns);
        var shape = model.ShapeOf(row, kind.Id, kind.LifePrior(), repairedAt is not null);
        return effect.Take(row, window, model.Effects(columns), worn, shape, model.ClockOf(repairedAt), grades);
    }
}

/// <summary>Everything about one client's next order, ready to be asked.</summary>
/// <param name="UnitKindId">What would be ordered.</param>
/// <param name="Each">A new unit of it.</param>
/// <param name="Working">The salon's days.</param>
/// <param name="LifeOfNew">How long a new unit will last.</param>
public sealed record ClientReorderInput(
    Guid ClientId,
    LocalDate Today,
    Guid UnitKindId,
    ReorderInput Question,
    RemainingLife Each,
    OpeningDays Working,
    LifePrediction LifeOfNew
)
{
    /// <summary>The client's units that the question counts, in its order: first those in hand. What is lent to them comes after their own.</summary>
    public required IReadOnlyList<Guid> InHand { get; init; }

    public required IReadOnlyList<Guid> InFlight { get; init; }

    /// <summary>Bondable for an emergency only: worn out, or kept as such.</summary>
    public required IReadOnlyList<Guid> Emergency { get; init; }

    /// <summary>What is left of each unit in hand.</summary>
    public required IReadOnlyDictionary<Guid, (LifePrediction Life, int WornDays)> Left { get; init; }

    /// <summary>The client's own units behind the model.</summary>
    public required IReadOnlyList<LifeSpell> Lives { get; init; }

    /// <summary>What the client's units share.</summary>
    public required SharedEffect Effect { get; init; }

    /// <summary>What bears on a new unit's life.</summary>
    public required IReadOnlyList<CovariateValue> ColumnsOfNew { get; init; }

    /// <summary>xᵀβ of a new unit.</summary>
    public required double EffectOfNew { get; init; }

    /// <summary>Units in hand or on order are among those that an alarm of the watch named: since this delivery.</summary>
    public LocalDate? WeakerSince { get; init; }

    /// <summary>The oldest order that may be forgotten, and is not counted on.</summary>
    public LocalDate? ForgottenSince { get; init; }

    /// <summary>A unit is bonded today.</summary>
    public required bool OnHead { get; init; }

    public ReorderOutlook Outlook(ReorderRule rule) => Outlook(rule, Question);

    /// <param name="question">The client's own, or what it would be if something were done.</param>
    public ReorderOutlook Outlook(ReorderRule rule, ReorderInput question)
    {
        var outlook = ReorderPlanner.Plan(rule, question, Today, UnitKindId, Each, Working) with { OnHead = OnHead };
        return outlook with { Warnings = new(WearsFast(rule, question, outlook), WeakerSince, ForgottenSince) };
    }

    // Whether a unit in hand looks more worn than its age says, so much that its client is endangered.
    private bool WearsFast(ReorderRule rule, ReorderInput question, ReorderOutlook outlook)
    {
        var worst = Math.Max(outlook.GapIfOrderedToday, outlook.GapBeforeArrival);
        if (!FastWearRule.MayWarn(worst, question.Alpha) || question.InHand.All(unit => unit.Grades is null))
            return false;
        var byAge = ReorderPlanner.LargerGapChance(
            rule,
            question with
            {
                InHand = [.. question.InHand.Select(unit => unit with { Grades = null })],
            }
        );
        for (var i = 0; i < InHand.Count; i++)
        {
            if (question.InHand[i].Grades is null || !Left.TryGetValue(InHand[i], out var left))
                continue;
            var (age, grades) = (
                new WearOutlook(byAge, left.Life.WithoutGrades.RemainingQuantile(left.WornDays, 0.5)),
                new WearOutlook(worst, left.Life.RemainingQuantile(left.WornDays, 0.5))
            );
            if (FastWearRule.Warns(age, grades, question.Alpha))
                return true;
        }
        return false;
    }
}
