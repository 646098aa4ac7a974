using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Benchmarks.Watch;

/// <summary>What the practice's records say on a day, and what a fit makes of them.</summary>
internal sealed class StoryBook
{
    private static readonly WindowPrior Factors = WindowPrior.ForAnyWindow(LifeDistribution.Weibull);
    private readonly List<StoryUnit> _units;
    private readonly int _today;

    public StoryBook(List<StoryUnit> units, int today)
    {
        (_today, _units) = (today, [.. units.Where(u => u.DeliveredOn <= today).OrderBy(u => u.DeliveredOn)]);
        var worn = _units.Where(u => u.BondedOn <= today).ToList();
        Fit = LifetimeFitter.Fit(
            LifeDistribution.Weibull,
            LifetimeFitRows.Create(
                [.. worn.Select(SpellOf)],
                [.. Enumerable.Range(0, 4).Select(j => new CovariateColumn($"c{j}", [.. worn.Select(u => Covariates(u.Client)[j])]))],
                [.. worn.Select(u => Place(u.Client))],
                [.. worn.Select(u => u.Client.Number)]
            ),
            Factors.ToLifePriors([.. Enumerable.Repeat(LifePriors.UsualCoefficient, 4)])
        );
    }

    public LifetimeFit Fit { get; }

    public StoryUnit[] Stream(int workshop) => [.. _units.Where(u => u.Client.Workshop == workshop)];

    public List<WatchedRow> Rows(StoryUnit[] stream) =>
        [
            .. stream
                .Select((unit, order) => (unit, order))
                .Where(u => u.unit.BondedOn <= _today)
                .Select(u => new WatchedRow(u.unit.Client.Number, u.order, SpellOf(u.unit), Place(u.unit.Client), Covariates(u.unit.Client))),
        ];

    /// <summary>Mean and variance of what is left of a unit, by its age, for an unknown client.</summary>
    public static Func<StoryClient, int, (double Mean, double Variance)> Outlook(LifetimeFit? fit)
    {
        var population = fit is { Missing: null } ? PopulationParameters.FromFit(fit) : PopulationParameters.FromPriors(Factors, 4);
        var tables = new Dictionary<(bool, int), (double, double)[]>();
        foreach (var (thin, workshop) in new[] { (false, 0), (false, 1), (true, 0), (true, 1) })
        {
            var client = new StoryClient(-1, thin, workshop, 0);
            var effects = Covariates(client).Select((x, j) => x * population.Coefficients[j]).Sum();
            tables[(thin, workshop)] = Table(
                new LifePrediction(population, ClientEffectNodes.For(population), Place(client), effects),
                thin ? 250 : 700
            );
        }
        return (client, age) =>
            tables[(client.IsThin, client.Workshop)] is var table && age < table.Length / 2 ? table[age] : (1, 1);
    }

    private static (double, double)[] Table(LifePrediction prediction, int days)
    {
        var survival = new double[days];
        prediction.SurvivalByDay(survival);
        var table = new (double, double)[days];
        var (first, second) = (0.0, 0.0);
        for (var age = days - 1; age >= 0; age--)
        {
            // E R and E R² / 2 of the rest, as sums of the survival beyond.
            second += first;
            first += survival[age];
            var (mean, square) = (first / Math.Max(survival[age], 1e-12), 2 * second / Math.Max(survival[age], 1e-12));
            table[age] = (mean, Math.Max(1, square - mean * mean));
        }
        return table;
    }

    private Spell SpellOf(StoryUnit unit)
    {
        var bonded = unit.BondedOn!.Value;
        var sound = unit.SoundOn.LastOrDefault(day => day <= _today, bonded) - bonded;
        return unit.FoundWornOutOn <= _today ? Spell.FromBounds(sound, unit.FoundWornOutOn!.Value - bonded) : Spell.RightCensored(sound);
    }

    private static RowLocationScale Place(StoryClient client) => client.Window.In(LifeDistribution.Weibull).Place;

    private static double[] Covariates(StoryClient client) =>
        [client.IsThin ? 0 : 1, client.IsThin ? 1 : 0, client.Workshop == 0 ? 1 : 0, client.Workshop == 1 ? 1 : 0];
}
