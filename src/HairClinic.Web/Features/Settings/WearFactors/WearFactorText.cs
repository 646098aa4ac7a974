using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Web.Features.Settings.WearFactors;

/// <summary>Habits in words: the localiser's keys.</summary>
public static class WearFactorText
{
    public static string Of(WearHabit habit) =>
        habit switch
        {
            WearHabit.OilySkin => "Oily skin",
            WearHabit.HeavySweat => "Heavy sweat",
            WearHabit.DailySwim => "Swims every day",
            WearHabit.DailyWash => "Washes every day",
            WearHabit.DailyHeat => "Hot tools every day",
            WearHabit.WaitsCut => "Waits between coats cut short",
            _ => "Repaired once",
        };
}
