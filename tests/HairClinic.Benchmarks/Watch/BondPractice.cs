using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Watch;

/// <summary>
/// Bonds of a practice day by day: two adhesives, a new lot of each every four months, taken down after some 32 days or within three days
/// of a lift. Of lifts 55 % are known to the day, the others lie between the last contact and the visit.
/// </summary>
/// <param name="badFrom">From that day on one lot, in use for four months, holds 25 % shorter; null: none does.</param>
internal sealed class BondPractice
{
    public const int LotDays = 120;
    private static readonly Window Holds = new(28, 56);
    private readonly Dice _dice;
    private readonly int? _badFrom;
    private readonly double _practice;
    private readonly double _scale;
    private readonly double[] _adhesives;
    private readonly List<(StoryClient Client, StoryUnit? Bond, int ComesOn)> _heads = [];

    public BondPractice(int clients, int seed, int? badFrom)
    {
        (_dice, _badFrom) = (new Dice(seed), badFrom);
        var factors = WindowPrior.ForAnyWindow(LifeDistribution.Weibull);
        (_practice, _scale) = (factors.PracticeFactor * _dice.Normal(), Math.Exp(0.2 * _dice.Normal()));
        _adhesives = [0.1 * _dice.Normal(), 0.1 * _dice.Normal()];
        for (var i = 0; i < clients; i++)
        {
            var client = new StoryClient(i, IsThin: false, _dice.Chance(0.3) ? 1 : 0, factors.ClientFactor * _dice.Normal())
            {
                Window = Holds,
            };
            _heads.Add((client, null, _dice.Whole(-34, -1)));
        }
    }

    public List<StoryUnit> Bonds { get; } = [];

    /// <summary>The lot a bond was made with.</summary>
    public static int LotOf(StoryUnit bond) => 1000 * (1 + bond.Client.Workshop) + (bond.DeliveredOn + 1200) / LotDays;

    public void Live(int today)
    {
        for (var i = 0; i < _heads.Count; i++)
        {
            var (client, bond, comesOn) = _heads[i];
            if (bond is { FoundWornOutOn: null } && today < bond.DeliveredOn + bond.Life)
                bond.SoundOn.Add(today);
            if (today < comesOn)
                continue;
            if (bond is not null && today >= bond.DeliveredOn + bond.Life)
                Report(bond, today);
            _heads[i] = Make(client, today);
        }
    }

    // Bonds on heads count as sound up to today; of one that has lifted unseen that is known up to the last contact only.
    private void Report(StoryUnit bond, int today)
    {
        bond.FoundWornOutOn = today;
        var lifted = bond.DeliveredOn + Math.Max(1, (int)Math.Ceiling(bond.Life));
        if (_dice.Chance(0.55))
            (bond.FoundWornOutOn, _) = (lifted, bond.SoundOn.RemoveAll(day => day >= lifted));
        else
            bond.SoundOn.RemoveAll(day => day > Math.Max(bond.DeliveredOn, lifted - _dice.Whole(1, 14)));
    }

    private (StoryClient Client, StoryUnit? Bond, int ComesOn) Make(StoryClient client, int today)
    {
        var row = Holds.In(LifeDistribution.Weibull);
        var centre = row.Centre + row.Width * (_practice + client.Effect) + _adhesives[client.Workshop];
        var hold = Math.Exp(centre + _scale * row.Sigma * _dice.Noise(LifeDistribution.Weibull));
        var isBad = client.Workshop == 0 && today >= _badFrom && today < _badFrom + LotDays;
        var bond = new StoryUnit(client, today, isBad ? 0.75 * hold : hold) { BondedOn = today, IsOfDecline = isBad };
        Bonds.Add(bond);
        return (client, bond, today + Math.Min(_dice.Whole(29, 34), (int)Math.Ceiling(bond.Life) + _dice.Whole(0, 3)));
    }
}
