using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What is true of one practice in a world. Nobody in its salons sees it.</summary>
internal sealed class PracticeTruth
{
    private readonly World _world;
    private readonly Streams _streams;
    private readonly LifeTruth _lives;
    private readonly LifeTruth _holds;
    private readonly WorkshopTruth[] _workshops;

    public PracticeTruth(World world, Streams streams)
    {
        (_world, _streams) = (world, streams);
        _lives = Truth(Draw.Lives, PracticeRows.LifeFactors[KnownCovariate.DailyHeat]);
        _holds = Truth(Draw.Holds, PracticeRows.HoldFactors[KnownCovariate.OilySkin]);
        _workshops = [.. PracticeRows.Leads.Select((row, i) => new WorkshopTruth(world, streams.For(Draw.Workshop, i), row))];

        // Two bases, two workshops or adhesives, and one habit.
        LifeTruth Truth(Draw what, double habit) =>
            new(
                streams.For(what),
                world.Distribution,
                [.. Enumerable.Repeat(new NormalPrior(0, world.CoefficientSpread), 4), new(Math.Log(habit), world.CoefficientSpread)],
                world.LogScaleSpread
            );
    }

    public Traits Client(int client) => Traits.Draw(client, _streams.For(Draw.Client, client), _lives, _holds);

    /// <summary>A unit that was in house when its client came.</summary>
    public UnitTruth AtHand(Traits client, int ordinal) =>
        Unit(client, ordinal, new Delivery(client.FirstDay, client.FirstDay, null, client.FirstDay));

    public UnitTruth Ordered(Traits client, int ordinal, int day) =>
        Unit(client, ordinal, _workshops[client.Workshop].Deliver(day, _streams.For(Draw.Lead, client.Client, ordinal)));

    /// <summary>What an order placed on a day would truly take, until it is ready; another for each number.</summary>
    public int Ready(Traits client, int orderedOn, int askedOn, int number) =>
        _workshops[client.Workshop].Deliver(orderedOn, _streams.For(Draw.Asked, client.Client, askedOn * 100 + number)).ReadyOn;

    public BondTruth Bond(Traits client, int ordinal, int madeOn)
    {
        double[] covariates = [1 - client.Base, client.Base, 1 - client.Adhesive, client.Adhesive, client.Oily];
        var hold = _streams.For(Draw.Hold, client.Client, ordinal);
        var days = _holds.Days(hold, PracticeRows.Holds[client.Base], client.HoldEffect, covariates);
        if (PracticeRows.DateOf(madeOn).Month is >= 6 and <= 8)
            days *= _world.SummerHold;
        if (_world.Lot is { } lot && lot.Covers(madeOn))
            days *= lot.Factor;
        return new BondTruth(days, hold);
    }

    private UnitTruth Unit(Traits client, int ordinal, Delivery delivery)
    {
        double[] covariates = [1 - client.Base, client.Base, 1 - client.Workshop, client.Workshop, client.Heat];
        var life = _lives.Days(
            _streams.For(Draw.Life, client.Client, ordinal),
            PracticeRows.Lives[client.Base],
            client.LifeEffect,
            covariates
        );
        if (_streams.For(Draw.Dud, client.Client, ordinal).Chance(_world.DudShare))
            life *= _world.DudLife;
        var worse = _world.Decline is { } decline && decline.Workshop == client.Workshop && delivery.ArrivesOn >= decline.FromDay;
        if (worse)
            life *= _world.Decline!.Factor;
        var repair = _streams.For(Draw.Repair, client.Client, ordinal);
        var repairedAt = repair.Chance(_world.RepairShare) ? (0.3 + 0.5 * repair.Share()) * life : double.PositiveInfinity;
        return new UnitTruth(
            delivery,
            life,
            repairedAt,
            _world.LifeAfterRepair,
            new WearPath(_streams.For(Draw.Wear, client.Client, ordinal))
        )
        {
            IsOfDecline = worse,
            Entries = _streams.For(Draw.Entry, client.Client, ordinal),
        };
    }
}
