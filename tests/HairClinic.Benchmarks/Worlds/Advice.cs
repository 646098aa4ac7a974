using HairClinic.Domain.Checks;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Learning;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What the program would say to one practice. This class, with <see cref="BookRows"/>, <see cref="BookLeads"/> and <see cref="BookWatch"/>, alone talks to the engine.</summary>
/// <remarks>
/// Lives are fitted and workshops watched, lead times and preparation learnt, every two weeks; holds are fitted and watched every four, and
/// what grades mean is looked at every eight. A client's own spells are read at the moment of asking, as the program does.
/// </remarks>
internal sealed class Advice(Spares spares, World world)
{
    /// <summary>Days ahead, as far as lives are summed.</summary>
    private const int Sight = 512;

    // Days between fits of holds, watches of bonds, and looks at what grades mean.
    private const int HoldsEvery = 28;
    private const int BondsEvery = 56;
    private const int GradesEvery = 112;

    private static readonly WorkshopWorkingDays EveryDay = new(PracticeRows.DateOf(0), [], Sight);
    private readonly ReorderRule _rule = new(Sight);
    private readonly Dictionary<UnitRecord, LifeSpell> _over = [];
    private readonly Dictionary<UnitRecord, (int Looks, bool Shorter)> _shorter = [];
    private readonly Desk _desk = new(world.IsClosedAtNewYear);
    private readonly BookWatch _watch = new();
    private BookLeads? _leads;
    private WearModel _hold = new(null, PracticeRows.HoldFactors);
    private WearModel _life = new(null, PracticeRows.LifeFactors);

    /// <summary>Workshops, adhesives and lots that were named as getting worse, as they were named.</summary>
    public List<Alarm> Alarms => _watch.Raised;

    /// <summary>What was asked about dates.</summary>
    public IEnumerable<DateCheck> Asked => _desk.Asked;

    /// <summary>Preparation as it is known at the end.</summary>
    public PreparationTime Preparation => Leads.Preparation;

    /// <summary>Grades count.</summary>
    public bool GradesTell => _life.Fit?.GradesTell == true;

    /// <summary>Fits that did not settle: what was believed before stays.</summary>
    public int Unsettled { get; private set; }

    private BookLeads Leads => _leads ??= new BookLeads(_desk);

    /// <summary>What was asked some days ago is answered.</summary>
    public void Answer(int day) => _desk.Answer(day);

    /// <summary>The nightly run, as often as it is played.</summary>
    public void Refit(int day, IReadOnlyList<ClientBook> clients)
    {
        Leads.Learn(day, clients);
        var holds = day % HoldsEvery == 0 ? FitHolds(day, clients) : null;
        var lives = FitLives(day, clients, day % GradesEvery == 0);
        var watched = world.WatchesBonds && day % BondsEvery == 0 ? holds : null;
        if (!_watch.Look(day, new BookOfSpells(clients, lives.Spells), lives.Fit, watched))
            return;
        // Their own column is fitted the next night.
        _over.Clear();
        FitLives(day, clients, withGrades: false);
    }

    /// <summary>A bond made on a day: how long it will hold, and when it is to be made anew.</summary>
    public (LifePrediction Hold, int DueOn) Bond(ClientBook client, int day)
    {
        var columns = BookRows.HoldCovariates(client, BondRecord.LotOf(day), day, _watch.OfBonds);
        var window = BookRows.HoldWindows[client.Base];
        List<HoldSpell> spells = [.. BookRows.Holds(client, day, _watch.OfBonds)];
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
        return (new(population, own, window.Place, effect), PracticeRows.DayOf(due.DueOn));
    }

    /// <summary>How long a unit lasts in all. One that was worn is asked with its age, so its own age is not among the client's spells.</summary>
    public LifePrediction Life(ClientBook client, UnitRecord unit, int day)
    {
        var lives = Lives(client, day);
        var life = lives.Find(l => l.UnitId == unit.Id);
        var byAge = _life.PredictUnit(
            [.. lives.Where(l => l != life)],
            BookRows.Kinds[client.Base],
            BookRows.LifeCovariates(client, unit.ArrivedOn, _watch.OfUnits),
            life?.RepairedAt
        );
        var worn = unit.WornDays(day);
        return _life.GradesOf(life, worn) is { } grades ? byAge.WithGrades(worn, grades) : byAge;
    }

    /// <summary>The last day to order, as of today; today where it has passed.</summary>
    public int OrderBy(ClientBook client, int day)
    {
        if (Missing(client) > 0)
            return day;
        var answer = _rule.Answer(Question(client, day));
        return ReorderRule.LastOrderDay(PracticeRows.DateOf(day), answer, PracticeRows.Opening) is { } last
            ? PracticeRows.DayOf(last)
            : day;
    }

    /// <summary>How many units to order, where an order goes out today.</summary>
    public int Quantity(ClientBook client, int day)
    {
        var enough = _rule.Quantity(Question(client, day), Unit(client, null, day, Lives(client, day)));
        return Math.Max(Math.Max(1, Missing(client)), enough ?? 1);
    }

    /// <summary>P(gap) for an order on each of the next days.</summary>
    public void GapByOrderDay(ClientBook client, int day, Span<double> gaps) => _rule.GapByOrderDay(Question(client, day), gaps);

    /// <summary>Looks whether units in house are to be said to wear faster than their age, as the card says it.</summary>
    public void Warn(ClientBook client, int day)
    {
        if (!GradesTell || !world.CountsWarnings)
            return;
        foreach (var unit in client.Units.Where(u => u.IsInHouse && u.WarnedOn is null && u.Looks.Count > 0))
        {
            if (!LooksShorter(client, unit, day))
                continue;
            var question = Question(client, day, withLeads: true);
            var worst = ReorderPlanner.LargerGapChance(_rule, question);
            if (!FastWearRule.MayWarn(worst, question.Alpha))
                continue;
            var byAge = ReorderPlanner.LargerGapChance(
                _rule,
                question with
                {
                    InHand = [.. question.InHand.Select(u => u with { Grades = null })],
                }
            );
            var (life, worn) = (Life(client, unit, day), unit.WornDays(day));
            var (plain, graded) = (
                new WearOutlook(byAge, life.WithoutGrades.RemainingQuantile(worn, 0.5)),
                new WearOutlook(worst, life.RemainingQuantile(worn, 0.5))
            );
            if (FastWearRule.Warns(plain, graded, question.Alpha))
                unit.WarnedOn = day;
        }
    }

    private static int[] UsualTargets { get; } = Array.ConvertAll(PracticeRows.HoldWeeks, weeks => new HoldPrior(weeks).TargetDays);

    // By how much the median moves changes with a look, hardly with a week: it is not asked more often.
    private bool LooksShorter(ClientBook client, UnitRecord unit, int day)
    {
        if (_shorter.TryGetValue(unit, out var known) && known.Looks == unit.Looks.Count)
            return known.Shorter;
        var (life, worn) = (Life(client, unit, day), unit.WornDays(day));
        var shorter =
            life != life.WithoutGrades && life.RemainingQuantile(worn, 0.5) < 0.8 * life.WithoutGrades.RemainingQuantile(worn, 0.5);
        _shorter[unit] = (unit.Looks.Count, shorter);
        return shorter;
    }

    private int Missing(ClientBook client) =>
        SpareRule.Missing(
            client.Base == 0 ? spares.Lace : spares.Thin,
            client.Units.Count(u => u.IsInHouse),
            client.Units.Count(u => u.IsInFlight && !_desk.MayBeForgotten(u))
        );

    /// <param name="withLeads">What is left of each order in flight, which bears on no reorder day, is worked out too.</param>
    private ReorderInput Question(ClientBook client, int day, bool withLeads = false)
    {
        var lead = Leads.OfNew(client);
        var days = Leads.DaysOf(client, day, Sight) ?? EveryDay;
        var lives = Lives(client, day);
        var shared = Shared(client, lives);
        var preparation = Leads.Preparation;
        return new(
            LifeDistribution.Weibull,
            shared.Nodes.Reduced(),
            [.. client.Units.Where(u => u.IsInHouse).Select(u => Unit(client, u, day, lives, shared))],
            [
                .. client
                    .Units.Where(u => u.IsInFlight && !_desk.MayBeForgotten(u))
                    .Select(u => new UnitOnOrder(Unit(client, u, day, lives, shared), withLeads ? Leads.Left(client, u, day) : lead, days)),
            ],
            lead,
            days,
            PracticeRows.PreparationDays
        )
        {
            Preparation = preparation.IsLearnt ? preparation : null,
        };
    }

    private SharedEffect Shared(ClientBook client, List<LifeSpell> lives)
    {
        var columns = BookRows.LifeCovariates(client, null, _watch.OfUnits);
        var population = _life.PopulationFor(BookRows.LifeWindows[client.Base], columns);
        return new(population, _life.ClientEffect(population, lives));
    }

    /// <param name="unit">Null for one that is still to be ordered.</param>
    private RemainingLife Unit(ClientBook client, UnitRecord? unit, int day, List<LifeSpell> lives, SharedEffect? shared = null)
    {
        var (window, columns) = (BookRows.LifeWindows[client.Base], BookRows.LifeCovariates(client, unit?.ArrivedOn, _watch.OfUnits));
        var life = unit is null ? null : lives.Find(l => l.UnitId == unit.Id);
        var row = _life.PopulationFor(window, columns);
        var worn = unit?.WornDays(day) ?? 0;
        return (shared ?? Shared(client, lives)).Take(
            row,
            window,
            _life.Effects(columns),
            worn,
            _life.ShapeOf(row, BookRows.Kinds[client.Base].Id, window, life?.RepairedAt is not null),
            _life.ClockOf(life?.RepairedAt),
            _life.GradesOf(life, worn)
        );
    }

    private List<LifeSpell> Lives(ClientBook client, int day)
    {
        var lives = new List<LifeSpell>();
        foreach (var unit in client.Units)
        {
            if (unit.Worn.Count == 0)
                continue;
            if (!_over.TryGetValue(unit, out var spell))
            {
                spell = BookRows.Life(client, unit, day, _watch.OfUnits);
                if (unit.RetiredOn is not null)
                    _over[unit] = spell;
            }
            lives.Add(spell);
        }
        return lives;
    }

    private CheckedWearFit<HoldSpell> FitHolds(int day, IReadOnlyList<ClientBook> clients)
    {
        var cut = PracticeRows.DateOf(day);
        List<HoldSpell> holds = [.. clients.SelectMany(c => BookRows.Holds(c, day, _watch.OfBonds))];
        var found = CheckedWearFit.OfHolds(holds, PracticeRows.HoldFactors, _hold.Fit, _desk.Facts, cut, default);
        _desk.Bring(found.Asked, DateCheckKind.BondHeld);
        _hold = Kept(found.Fit, PracticeRows.HoldFactors) ?? _hold;
        return found;
    }

    private CheckedWearFit<LifeSpell> FitLives(int day, IReadOnlyList<ClientBook> clients, bool withGrades)
    {
        List<LifeSpell> lives = [.. clients.SelectMany(c => Lives(c, day))];
        var cut = PracticeRows.DateOf(day);
        var found = CheckedWearFit.OfLives(lives, PracticeRows.LifeFactors, _life.Fit, _desk.Facts, cut, default);
        if (withGrades)
            GradeLearner.Learn(found.Fit, _life.Fit, lives, PracticeRows.LifeFactors);
        else if (_life.Fit is { GradesLearntOn: not null } last)
            found.Fit.KeepGrades(last);
        _desk.Bring(found.Asked, DateCheckKind.UnitLasted);
        _life = Kept(found.Fit, PracticeRows.LifeFactors) ?? _life;
        return found;
    }

    private WearModel? Kept(StoredFit stored, IReadOnlyDictionary<KnownCovariate, double> factors)
    {
        Unsettled += stored.Converged ? 0 : 1;
        return stored is { Converged: true, Spells: > 0 } ? new WearModel(stored, factors) : null;
    }
}

/// <summary>Units always ready beside what is worn. 0 has no such rule.</summary>
internal sealed record Spares(int Lace, int Thin);
