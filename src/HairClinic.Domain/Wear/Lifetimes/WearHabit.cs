namespace HairClinic.Domain.Wear.Lifetimes;

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
