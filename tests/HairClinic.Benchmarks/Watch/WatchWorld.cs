using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Watch;

/// <summary>What is true of the practices that are played, and of one workshop's decline.</summary>
/// <param name="ThinShare">Share of clients who wear thin bases.</param>
/// <param name="DeclineFrom">The day from which units of the first workshop are delivered worse; null: never.</param>
internal sealed record WatchWorld(string Name, int Clients, double ThinShare, int? DeclineFrom)
{
    public const int Days = 730;

    /// <summary>What is left of a life after the decline.</summary>
    public double LeftOfLife { get; init; } = 0.75;

    /// <summary>Standard deviations of the true β and s about 0; the model supposes 0.35 and 0.4.</summary>
    public double CoefficientSpread { get; init; } = 0.1;

    public double LogScaleSpread { get; init; } = 0.2;

    /// <summary>Chance that a unit lasts 45 % of its life only.</summary>
    public double Duds { get; init; }

    public static Window Lace { get; } = new(182, 273);

    public static Window Thin { get; } = new(45, 75);
}

/// <summary>What is true of one practice.</summary>
internal sealed class WatchTruth
{
    private readonly WatchWorld _world;
    private readonly double _practice;
    private readonly double _scale;
    private readonly double[] _bases;
    private readonly double[] _workshops;

    public WatchTruth(Dice dice, WatchWorld world)
    {
        _world = world;
        _practice = WindowPrior.ForAnyWindow(LifeDistribution.Weibull).PracticeFactor * dice.Normal();
        _scale = Math.Exp(world.LogScaleSpread * dice.Normal());
        _bases = [world.CoefficientSpread * dice.Normal(), world.CoefficientSpread * dice.Normal()];
        _workshops = [world.CoefficientSpread * dice.Normal(), world.CoefficientSpread * dice.Normal()];
    }

    /// <summary>Worn days that a unit lasts.</summary>
    public double Life(Dice dice, StoryClient client, int deliveredOn)
    {
        var row = client.Window.In(LifeDistribution.Weibull);
        var centre = row.Centre + row.Width * (_practice + client.Effect) + _bases[client.IsThin ? 1 : 0] + _workshops[client.Workshop];
        var life = Math.Exp(centre + _scale * row.Sigma * dice.Noise(LifeDistribution.Weibull));
        if (client.Workshop == 0 && deliveredOn >= _world.DeclineFrom)
            life *= _world.LeftOfLife;
        return _world.Duds > 0 && dice.Chance(_world.Duds) ? 0.45 * life : life;
    }
}

/// <summary>Somebody who wears one kind of unit from one workshop.</summary>
internal sealed record StoryClient(int Number, bool IsThin, int Workshop, double Effect)
{
    public Window Window => IsThin ? WatchWorld.Thin : WatchWorld.Lace;
}

/// <summary>A unit as it truly is, and what was seen of it.</summary>
internal sealed class StoryUnit(StoryClient client, int deliveredOn, double life)
{
    public StoryClient Client { get; } = client;

    public int DeliveredOn { get; } = deliveredOn;

    public double Life { get; } = life;

    public int? BondedOn { get; set; }

    /// <summary>The days on which somebody looked and found that it still wears.</summary>
    public List<int> SoundOn { get; } = [];

    public int? FoundWornOutOn { get; set; }

    /// <summary>The day on which it truly was worn out, and whether nothing was ready then.</summary>
    public int? EndedOn { get; set; }

    public bool LeftGap { get; set; }
}
