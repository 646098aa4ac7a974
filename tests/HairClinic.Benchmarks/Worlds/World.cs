using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>How a practice's truth differs from what the engine assumes. The default is the engine's own model.</summary>
internal sealed record World(string Name, string Told)
{
    public LifeDistribution Distribution { get; init; } = LifeDistribution.Weibull;

    /// <summary>Of a covariate's effect over practices; the model supposes 0.35.</summary>
    public double CoefficientSpread { get; init; } = 0.1;

    /// <summary>Of s over practices; the model supposes 0.4.</summary>
    public double LogScaleSpread { get; init; } = 0.2;

    /// <summary>What a bond made in June, July or August holds, as a share of what it would.</summary>
    public double SummerHold { get; init; } = 1;

    public BadLot? Lot { get; init; }

    /// <summary>Of units that live <see cref="DudLife"/> of their life.</summary>
    public double DudShare { get; init; }

    public double DudLife { get; init; } = 0.45;

    /// <summary>Of units repaired once, of whose remaining life <see cref="LifeAfterRepair"/> is left.</summary>
    public double RepairShare { get; init; }

    public double LifeAfterRepair { get; init; } = 0.6;

    public Decline? Decline { get; init; }

    /// <summary>Both workshops close from 20 December to 9 January, and nobody enters it.</summary>
    public bool IsClosedAtNewYear { get; init; }

    /// <summary>Of orders that take twice as long.</summary>
    public double SlowShare { get; init; }

    public double RemakeShare { get; init; } = 0.05;

    /// <summary>Days from arrival until a unit is ready; 14 is what the practice's row says.</summary>
    public (int From, int Through) Preparation { get; init; } = (14, 14);

    /// <summary>Days between fits of lives, each with a watch of the workshops; the program does both every night.</summary>
    public int RefitEvery =>
        Decline is not null ? 7
        : Name == "control" ? 14
        : 28;

    /// <summary>Bonds are watched: in other worlds they are as in the first.</summary>
    public bool WatchesBonds => Lot is not null || SummerHold < 1 || Name == "control";

    /// <summary>Warnings of units that wear faster than their age are counted.</summary>
    public bool CountsWarnings => DudShare > 0 || Name == "control";

    public static IReadOnlyList<World> All { get; } =
    [
        new("control", "the engine's own model: beta sd 0.1, s sd 0.2"),
        new("wide", "practices as different as the model supposes: beta sd 0.35, s sd 0.4")
        {
            CoefficientSpread = 0.35,
            LogScaleSpread = 0.4,
        },
        new("log-normal", "lives and holds log-normal") { Distribution = LifeDistribution.LogNormal },
        new("summer", "bonds made in June to August hold 20 % shorter") { SummerHold = 0.8 },
        new("lot", "bonds made on the days 150 to 209 hold half as long") { Lot = new(0.5) },
        new("duds", "15 % of units live 45 % of their life") { DudShare = 0.15 },
        new("drift", "units of the first workshop delivered from day 240 on live 25 % shorter")
        {
            Decline = new(Workshop: 0, FromDay: 240, 0.75),
        },
        new("repairs", "40 % of units repaired once, what is left of their life x 0.6") { RepairShare = 0.4 },
        Leads(new("leads", "closure not entered, 12 % of orders twice as long, preparation 7-35 d, 8 % remakes")),
        new("closure", "the closure alone") { IsClosedAtNewYear = true },
        new("slow", "the slow orders alone") { SlowShare = 0.12 },
        Leads(
            new("all", "summer, lot, duds, repairs and leads at once")
            {
                SummerHold = 0.8,
                Lot = new(0.5),
                DudShare = 0.15,
                RepairShare = 0.4,
            }
        ),
    ];

    private static World Leads(World world) =>
        world with
        {
            IsClosedAtNewYear = true,
            SlowShare = 0.12,
            Preparation = (7, 35),
            RemakeShare = 0.08,
        };
}

/// <summary>Every bond made while one lot is used is made with it, and holds so much of what it should.</summary>
internal sealed record BadLot(double Factor)
{
    /// <summary>On which the bad lot is begun.</summary>
    public const int FirstDay = 150;

    /// <summary>For which a lot lasts.</summary>
    public const int Days = 60;

    public bool Covers(int day) => day is >= FirstDay and < FirstDay + Days;
}

/// <summary>From that day on what a workshop delivers lives so much of what it would.</summary>
internal sealed record Decline(int Workshop, int FromDay, double Factor);
