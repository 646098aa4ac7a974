using HairClinic.Domain.Clients;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// The one table of what may change how long a bond holds or a unit lasts. A row has its labels, how it is read from a client's care
/// facts, what it affects, and what is assumed of it until the practice's records say better. Which these are, and by how much, is
/// common practice, no source.
/// </summary>
public static class CovariateCatalog
{
    public static readonly IReadOnlyList<CovariateDefinition> All =
    [
        new(KnownCovariate.OilySkin, "Oily skin", "oily skin", f => f.Skin == SkinOiliness.Oily ? 1 : 0) { OnHold = 0.7 },
        new(KnownCovariate.HeavySweat, "Heavy sweat", "heavy sweat", f => f.Sweat == Sweating.Heavy ? 1 : 0) { OnHold = 0.7 },
        new(KnownCovariate.DailySwim, "Swims every day", "swimming", f => OfDaily(f.SwimsPerWeek)) { OnHold = 0.6, OnLife = 0.7 },
        new(KnownCovariate.DailyWash, "Washes every day", "washing", f => OfDaily(f.WashesPerWeek)) { OnHold = 1, OnLife = 0.8 },
        new(KnownCovariate.DailyHeat, "Hot tools every day", "hot tools", f => OfDaily(f.HeatPerWeek)) { OnLife = 0.8 },
        new(KnownCovariate.WaitsCut, "Waits between coats cut short", "waits cut short", ReadFrom: null) { OnHold = 1 },
        new(KnownCovariate.Repaired, "Repaired once", "a repair", ReadFrom: null) { OnLife = 1 },
    ];

    public static CovariateDefinition DefinitionOf(KnownCovariate habit) => All.Single(r => r.Habit == habit);

    /// <summary>What was known on a day: the newest facts as of it or earlier.</summary>
    public static CareFact? FactAsOf(IEnumerable<CareFact> facts, LocalDate day) => facts.Where(f => f.AsOf <= day).MaxBy(f => f.AsOf);

    /// <summary>Which of a client's skin and habits affect it.</summary>
    /// <returns>Each with its value: 1 for what is so, the share of daily for what is done some times a week; what does not apply is left out.</returns>
    public static IEnumerable<(KnownCovariate Habit, double Value)> ValuesFromHabits(CareHabits habits, LifetimeKind quantity) =>
        from row in All
        where row.ReadFrom is not null && row.AssumedFactor(quantity) is not null
        let value = row.ReadFrom!(habits)
        where value > 0
        select (row.Habit, value);

    private static double OfDaily(decimal? timesPerWeek) => (double)(timesPerWeek ?? 0) / 7;
}

/// <param name="Label">On a list of its own, as the localiser's key.</param>
/// <param name="Name">Within a sentence, as the localiser's key.</param>
/// <param name="ReadFrom">Its value by what is known of the client; null where it is the bond's or the unit's own.</param>
public sealed record CovariateDefinition(KnownCovariate Habit, string Label, string Name, Func<CareHabits, double>? ReadFrom)
{
    /// <summary>The factor on a hold that is assumed until the records say better; 1 assumes nothing, null where it has no effect.</summary>
    public double? OnHold { get; init; }

    /// <summary>The same of a unit's life.</summary>
    public double? OnLife { get; init; }

    public double? AssumedFactor(LifetimeKind quantity) => quantity == LifetimeKind.Hold ? OnHold : OnLife;
}

/// <summary>A fact about client, bond or unit that may change how long it lasts. Stored by name: rename only with a migration.</summary>
public enum KnownCovariate
{
    /// <summary>Oily skin, or not.</summary>
    OilySkin,

    /// <summary>Heavy sweat, or not.</summary>
    HeavySweat,

    /// <summary>Swims a week, as a share of daily.</summary>
    DailySwim,

    /// <summary>Washes a week, as a share of daily.</summary>
    DailyWash,

    /// <summary>Hot tools a week, as a share of daily.</summary>
    DailyHeat,

    /// <summary>The drying waits between coats were cut short.</summary>
    WaitsCut,

    /// <summary>The unit was repaired, from that day on.</summary>
    Repaired,
}

/// <summary>What is learnt from the practice's own records.</summary>
public enum LifetimeKind
{
    /// <summary>Days from the bond until an edge comes up.</summary>
    Hold,

    /// <summary>Worn days until a unit is worn out.</summary>
    Life,
}

/// <summary>
/// The practice's row for something that shortens or lengthens hold or life: it multiplies the expected time. It is where the
/// fit starts from; the practice's own records move it.
/// </summary>
public sealed class WearFactor : PracticeOwned
{
    private WearFactor() { }

    public WearFactor(Guid id, LifetimeKind quantity, KnownCovariate habit, double factor)
    {
        (Id, Quantity, Habit) = (id, quantity, habit);
        SetFactor(factor);
    }

    public LifetimeKind Quantity { get; private set; }
    public KnownCovariate Habit { get; private set; }
    public double Factor { get; private set; }

    /// <exception cref="Refusal">Outside 0.2–2.</exception>
    public void SetFactor(double factor) =>
        Factor = factor is >= 0.2 and <= 2 ? factor : throw new Refusal("A factor lies between 0.2 and 2; 1 changes nothing.");
}
