using HairClinic.Domain.Clients;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// The one table of what may change how long a bond holds, or a unit lasts: a row says in which words, how it is read from what is known
/// of a client, what it bears on, and what is assumed of it before the practice's records tell. Which these are, and by how much, is
/// common practice, no source.
/// </summary>
public static class WearHabits
{
    public static readonly IReadOnlyList<WearHabitRow> All =
    [
        new(WearHabit.OilySkin, "Oily skin", "oily skin", f => f.Skin == SkinOiliness.Oily ? 1 : 0) { OnHold = 0.7 },
        new(WearHabit.HeavySweat, "Heavy sweat", "heavy sweat", f => f.Sweat == Sweating.Heavy ? 1 : 0) { OnHold = 0.7 },
        new(WearHabit.DailySwim, "Swims every day", "swimming", f => OfDaily(f.SwimsPerWeek)) { OnHold = 0.6, OnLife = 0.7 },
        new(WearHabit.DailyWash, "Washes every day", "washing", f => OfDaily(f.WashesPerWeek)) { OnHold = 1, OnLife = 0.8 },
        new(WearHabit.DailyHeat, "Hot tools every day", "hot tools", f => OfDaily(f.HeatPerWeek)) { OnLife = 0.8 },
        new(WearHabit.WaitsCut, "Waits between coats cut short", "waits cut short", ReadFrom: null) { OnHold = 1 },
        new(WearHabit.Repaired, "Repaired once", "a repair", ReadFrom: null) { OnLife = 1 },
    ];

    public static WearHabitRow Row(WearHabit habit) => All.Single(r => r.Habit == habit);

    /// <summary>What was known on a day: the newest facts as of it or earlier.</summary>
    public static CareFact? KnownOn(IEnumerable<CareFact> facts, LocalDate day) => facts.Where(f => f.AsOf <= day).MaxBy(f => f.AsOf);

    /// <summary>What of a client's skin and habits bears on it.</summary>
    /// <returns>Each with its value: 1 for what is so, the share of daily for what is done some times a week; what is not so is left out.</returns>
    public static IEnumerable<(WearHabit Habit, double Value)> Read(CareHabits habits, WearQuantity quantity) =>
        from row in All
        where row.ReadFrom is not null && row.AssumedOn(quantity) is not null
        let value = row.ReadFrom!(habits)
        where value > 0
        select (row.Habit, value);

    private static double OfDaily(decimal? timesPerWeek) => (double)(timesPerWeek ?? 0) / 7;
}

/// <param name="Label">On a list of its own, as the localiser's key.</param>
/// <param name="Name">Within a sentence, as the localiser's key.</param>
/// <param name="ReadFrom">Its value by what is known of the client; null where it is the bond's or the unit's own.</param>
public sealed record WearHabitRow(WearHabit Habit, string Label, string Name, Func<CareHabits, double>? ReadFrom)
{
    /// <summary>By what a hold is taken to be multiplied before the records tell; 1 assumes nothing, null where it does not bear on it.</summary>
    public double? OnHold { get; init; }

    /// <summary>The same of a unit's life.</summary>
    public double? OnLife { get; init; }

    public double? AssumedOn(WearQuantity quantity) => quantity == WearQuantity.Hold ? OnHold : OnLife;
}

/// <summary>What is known of client, bond or unit and may change how long it lasts. Stored by name: rename only with a migration.</summary>
public enum WearHabit
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
public enum WearQuantity
{
    /// <summary>Days from the bond until an edge comes up.</summary>
    Hold,

    /// <summary>Worn days until a unit is worn out.</summary>
    Life,
}
