using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>What the engine believes of a practice's holds or lives once it has read the book.</summary>
internal sealed class Belief
{
    private const LifeDistribution Fitted = LifeDistribution.Weibull;
    private readonly ILookup<int, Seen> _byClient;
    private readonly IReadOnlyList<string> _names;
    private readonly PopulationParameters _population;

    public Belief(List<Seen> seen, IReadOnlyList<string> names, IReadOnlyList<NormalPrior> priors)
    {
        (_byClient, _names) = (seen.ToLookup(row => row.Client), names);
        var factors = WindowPrior.FromWindow(Fitted, 1, 2);
        _population = PopulationParameters.FromFit(LifetimeFitter.Fit(Fitted, Lay(seen), factors.ToLifePriors(priors)));
    }

    private Belief(Belief belief, PopulationParameters population) =>
        (_byClient, _names, _population) = (belief._byClient, belief._names, population);

    /// <summary>The same book read by somebody who knows the practice's truths, and only has to find out about the client.</summary>
    public Belief Knowing(LifeTruth truth) =>
        new(
            this,
            _population with
            {
                LogScale = Math.Log(truth.Scale),
                Coefficients = truth.Coefficients,
                PracticeMean = truth.Practice,
                PracticeVariance = 0,
            }
        );

    /// <summary>A fresh bond or unit of the client's.</summary>
    public LifePrediction Next(int client, Window window, double[] covariates) =>
        new(_population, Nodes([.. _byClient[client]]), window.In(Fitted).Place, Linear(covariates));

    /// <summary>A unit in service: asked for what is left given its age, so its own age is not among the rows.</summary>
    public LifePrediction Running(int client, LivingUnit unit)
    {
        var rows = _byClient[client].Where(row => !unit.Known.Any(known => ReferenceEquals(known, row))).ToList();
        return new(_population, Nodes(rows), unit.Window.In(Fitted).Place, Linear(unit.Covariates));
    }

    /// <summary>For a sum over units, within which each life is conditional on its age: all rows are the belief's.</summary>
    public ClientEffectNodes Nodes(int client) => Nodes([.. _byClient[client]]).Reduced();

    public RemainingLife InHand(LivingUnit unit)
    {
        var place = unit.Window.In(Fitted).Place;
        return new(place.Offset + Linear(unit.Covariates), place.Loading, place.Sigma * Math.Exp(_population.LogScale), unit.WornDays);
    }

    private ClientEffectNodes Nodes(List<Seen> own) => ClientEffectNodes.For(_population, Lay(own));

    private double Linear(double[] covariates) => covariates.Select((x, j) => x * _population.Coefficients[j]).Sum();

    private LifetimeFitRows Lay(List<Seen> seen) =>
        LifetimeFitRows.Create(
            [.. seen.Select(row => row.Spell)],
            [.. _names.Select((name, j) => new CovariateColumn(name, [.. seen.Select(row => row.Covariates[j])]))],
            [.. seen.Select(row => row.Window.In(Fitted).Place)],
            [.. seen.Select(row => row.Client)],
            [.. seen.Select(row => row.Entered)]
        );
}
