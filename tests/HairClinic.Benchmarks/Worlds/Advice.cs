using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Learning;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What the program would say to one practice. This class alone, with <see cref="BookRows"/>, talks to the engine.</summary>
/// <remarks>
/// Models and lead times are as the last monthly run left them; a client's own spells are read at the moment of asking, as the program does.
/// What the book has and is not asked yet: all four grades of each look, lots, days of repair, deliveries in order, days of preparation.
/// Orders in flight count as lives to come: their own arrival bears on no reorder day, so no table is made of it.
/// </remarks>
internal sealed class Advice(Spares spares)
{
    /// <summary>Days ahead, as far as lives are summed, and lead times are laid out.</summary>
    private const int Sight = 512;
    private const int LeadSight = 400;

    private static readonly WorkshopWorkingDays EveryDay = new(PracticeRows.DateOf(0), [], Sight);
    private readonly ReorderRule _rule = new(Sight);
    private readonly Dictionary<UnitRecord, LifeSpell> _over = [];
    private readonly LeadTimeTable?[,] _leads = new LeadTimeTable?[PracticeRows.Lives.Length, PracticeRows.Leads.Length];
    private WearModel _hold = new(null, PracticeRows.HoldFactors);
    private WearModel _life = new(null, PracticeRows.LifeFactors);

    /// <summary>Workshops that were named as getting worse, as they were named. The engine names none yet.</summary>
    public List<Alarm> Alarms { get; } = [];

    /// <summary>Fits that did not settle: what was believed before stays.</summary>
    public int Unsettled { get; private set; }

    /// <summary>The monthly run.</summary>
    public void Refit(int day, IReadOnlyList<ClientBook> clients)
    {
        List<HoldSpell> holds = [.. clients.SelectMany(c => BookRows.Holds(c, day))];
        var cut = PracticeRows.DateOf(day);
        _hold = Kept(WearModelFitter.FitHolds(holds, PracticeRows.HoldFactors, cut, default), PracticeRows.HoldFactors) ?? _hold;
        List<LifeSpell> lives = [.. clients.SelectMany(c => Lives(c, day))];
        _life = Kept(WearModelFitter.FitLives(lives, PracticeRows.LifeFactors, cut, default), PracticeRows.LifeFactors) ?? _life;
        for (var workshop = 0; workshop < PracticeRows.Leads.Length; workshop++)
        {
            var made = clients.Where(c => c.Workshop == workshop).ToList();
            var remakes = BookRows.Remakes(made.SelectMany(c => c.Units));
            for (var kind = 0; kind < PracticeRows.Lives.Length; kind++)
            {
                var lead = BookRows.Lead(made.Where(c => c.Base == kind).SelectMany(c => c.Units), PracticeRows.Leads[workshop], day);
                _leads[kind, workshop] = LeadTimeTable.FromLeadTime(lead, remakes.Mean, PracticeRows.InspectionDays, LeadSight);
            }
        }
    }

    /// <summary>A bond made on a day: how long it will hold, and when it is to be made anew.</summary>
    public (LifePrediction Hold, int DueOn) Bond(ClientBook client, int day)
    {
        var (columns, window) = (BookRows.HoldCovariates(client, BondRecord.LotOf(day), day), BookRows.HoldWindows[client.Base]);
        List<HoldSpell> spells = [.. BookRows.Holds(client, day)];
        var population = _hold.PopulationFor(window, columns);
        var (own, effect) = (_hold.ClientEffect(population, spells), _hold.Effects(columns));
        var learnt = RebondTarget.FromModel(population, own, window, effect, _hold.Fit is not null);
        var due = DueRule.DueWindowFor(
            new(
                PracticeRows.DateOf(day),
                PracticeRows.HoldWeeks[client.Base],
                learnt?.Days ?? UsualTargets[client.Base],
                PracticeRows.Opening
            )
            {
                Learnt = learnt,
            }
        );
        return (_hold.Predict(spells, window, columns), PracticeRows.DayOf(due.DueOn));
    }

    /// <summary>How long a unit lasts in all. One that was worn is asked with its age, so its own age is not among the client's spells.</summary>
    public LifePrediction Life(ClientBook client, UnitRecord unit, int day) =>
        _life.PredictUnit(
            [.. Lives(client, day, without: unit)],
            BookRows.Kinds[client.Base],
            BookRows.LifeCovariates(client),
            RepairedAt(client, unit, day)
        );

    /// <summary>The last day to order, as of today; today where it has passed.</summary>
    public int OrderBy(ClientBook client, int day)
    {
        if (spares.AreMissing(client))
            return day;
        var answer = _rule.Answer(Question(client, day));
        return ReorderRule.LastOrderDay(PracticeRows.DateOf(day), answer, PracticeRows.Opening) is { } last
            ? PracticeRows.DayOf(last)
            : day;
    }

    /// <summary>How many units to order, where an order goes out today.</summary>
    public int Quantity(ClientBook client, int day) => Math.Max(1, _rule.Quantity(Question(client, day), Unit(client, null, day)) ?? 1);

    /// <summary>P(gap) for an order on each of the next days.</summary>
    public void GapByOrderDay(ClientBook client, int day, Span<double> gaps) => _rule.GapByOrderDay(Question(client, day), gaps);

    private static int[] UsualTargets { get; } = Array.ConvertAll(PracticeRows.HoldWeeks, weeks => new HoldPrior(weeks).TargetDays);

    private ReorderInput Question(ClientBook client, int day)
    {
        var lead = Lead(client);
        var shared = Shared(client, day);
        return new(
            LifeDistribution.Weibull,
            shared.Nodes.Reduced(),
            [.. client.Units.Where(u => u.IsInHouse).Select(u => Unit(client, u, day, shared))],
            [.. client.Units.Where(u => u.IsInFlight).Select(u => new UnitOnOrder(Unit(client, u, day, shared), lead, EveryDay))],
            lead,
            EveryDay,
            PracticeRows.PreparationDays
        );
    }

    private SharedEffect Shared(ClientBook client, int day)
    {
        var population = _life.PopulationFor(BookRows.LifeWindows[client.Base], BookRows.LifeCovariates(client));
        return new(population, _life.ClientEffect(population, [.. Lives(client, day)]));
    }

    private RemainingLife Unit(ClientBook client, UnitRecord? unit, int day, SharedEffect? shared = null)
    {
        var (window, columns) = (BookRows.LifeWindows[client.Base], BookRows.LifeCovariates(client));
        var repaired = unit is null ? null : RepairedAt(client, unit, day);
        var row = _life.PopulationFor(window, columns);
        return (shared ?? Shared(client, day)).Take(
            row,
            window,
            _life.Effects(columns),
            unit?.WornDays(day) ?? 0,
            _life.ShapeOf(row, BookRows.Kinds[client.Base].Id, BookRows.Kinds[client.Base].LifePrior(), repaired is not null),
            _life.ClockOf(repaired)
        );
    }

    private static double? RepairedAt(ClientBook client, UnitRecord unit, int day) =>
        unit.Worn.Count == 0 ? null : BookRows.Life(client, unit, day).RepairedAt;

    private LeadTimeTable Lead(ClientBook client) =>
        _leads[client.Base, client.Workshop] ??= LeadTimeTable.FromLeadTime(
            LeadTime.Learn(PracticeRows.Leads[client.Workshop], [], []),
            PracticeRows.Remakes.Mean,
            PracticeRows.InspectionDays,
            LeadSight
        );

    private IEnumerable<LifeSpell> Lives(ClientBook client, int day, UnitRecord? without = null)
    {
        foreach (var unit in client.Units)
        {
            if (unit.Worn.Count == 0 || unit == without)
                continue;
            if (_over.TryGetValue(unit, out var known))
            {
                yield return known;
                continue;
            }
            var spell = BookRows.Life(client, unit, day);
            if (unit.RetiredOn is not null)
                _over[unit] = spell;
            yield return spell;
        }
    }

    private WearModel? Kept(StoredFit stored, IReadOnlyDictionary<KnownCovariate, double> factors)
    {
        Unsettled += stored.Converged ? 0 : 1;
        return stored is { Converged: true, Spells: > 0 } ? new WearModel(stored, factors) : null;
    }
}

/// <summary>A workshop that is said, on a day, to have got worse.</summary>
internal readonly record struct Alarm(int Day, int Workshop);

/// <summary>Always so many ready: an order whenever fewer are in house or in flight beside what is worn. 0 has no such rule.</summary>
internal sealed record Spares(int Lace, int Thin)
{
    public bool AreMissing(ClientBook client)
    {
        var wanted = client.Base == 0 ? Lace : Thin;
        return wanted > 0 && client.Units.Count(u => u.RetiredOn is null && !u.IsWorn) < wanted;
    }
}
