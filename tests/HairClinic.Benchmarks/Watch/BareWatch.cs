using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Benchmarks.Watch;

/// <summary>
/// The plain way: each unit by itself, under the fit without those of the last year – the priors in a young practice –, marginal over the
/// client's effect and the doubt of δ.
/// </summary>
internal sealed class BareWatch
{
    private readonly StoryBook _reference;
    private readonly int _today;
    private readonly PopulationParameters _population;

    public BareWatch(List<StoryUnit> units, int today)
    {
        _today = today;
        _reference = new StoryBook([.. units.Where(u => u.DeliveredOn < today - StreamWatch.WatchedDays)], today);
        _population = _reference.Population;
    }

    public double[] Increments(StoryUnit[] stream) =>
        Array.ConvertAll(stream, unit => unit.BondedOn <= _today && unit.DeliveredOn >= _today - StreamWatch.WatchedDays ? Ratio(unit) : 0);

    private double Ratio(StoryUnit unit)
    {
        var life = _reference.SpellOf(unit);
        return life is { End: SpellEnd.After, Lower: 0 } ? 0 : Math.Log(Chance(life, unit, -0.25) / Chance(life, unit, 0));
    }

    private double Chance(Spell life, StoryUnit unit, double shift)
    {
        var prediction = new LifePrediction(
            _population,
            _reference.Client(_population, unit.Client),
            StoryBook.Place(unit.Client),
            StoryBook.Effects(_population, unit.Client) + shift
        );
        var ended = life.End == SpellEnd.After ? 0 : prediction.Survival(life.Upper);
        return Math.Max(prediction.Survival(life.Lower) - ended, 1e-300);
    }
}
