using HairClinic.Domain.Clients;
using NodaTime;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What of a client's skin and habits bears on how long a bond holds, or a unit lasts. Which they are is common practice, no source.</summary>
public static class WearHabits
{
    /// <summary>What was known on a day: the newest facts as of it or earlier.</summary>
    public static CareFact? KnownOn(IEnumerable<CareFact> facts, LocalDate day) => facts.Where(f => f.AsOf <= day).MaxBy(f => f.AsOf);

    /// <returns>Each with its value: 1 for what is so, the share of daily for what is done some times a week.</returns>
    public static IEnumerable<(WearHabit Habit, double Value)> OfHold(CareFact fact)
    {
        if (fact.Skin == SkinOiliness.Oily)
            yield return (WearHabit.OilySkin, 1);
        if (fact.Sweat == Sweating.Heavy)
            yield return (WearHabit.HeavySweat, 1);
        if (fact.SwimsPerWeek is > 0)
            yield return (WearHabit.DailySwim, OfDaily(fact.SwimsPerWeek.Value));
        if (fact.WashesPerWeek is > 0)
            yield return (WearHabit.DailyWash, OfDaily(fact.WashesPerWeek.Value));
    }

    /// <inheritdoc cref="OfHold"/>
    public static IEnumerable<(WearHabit Habit, double Value)> OfLife(CareFact fact)
    {
        if (fact.WashesPerWeek is > 0)
            yield return (WearHabit.DailyWash, OfDaily(fact.WashesPerWeek.Value));
        if (fact.HeatPerWeek is > 0)
            yield return (WearHabit.DailyHeat, OfDaily(fact.HeatPerWeek.Value));
        if (fact.SwimsPerWeek is > 0)
            yield return (WearHabit.DailySwim, OfDaily(fact.SwimsPerWeek.Value));
    }

    private static double OfDaily(decimal timesPerWeek) => (double)timesPerWeek / 7;
}
