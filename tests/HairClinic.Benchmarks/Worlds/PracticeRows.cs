using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What every simulated practice has in its settings, and the calendar they live by.</summary>
internal static class PracticeRows
{
    public const int PreparationDays = 14;
    public const int InspectionDays = 4;

    /// <summary>Day 0: a Monday.</summary>
    private static readonly LocalDate Start = new(2027, 3, 1);

    // A client's first day lies at most so far before day 0.
    public const int Before = 120;
    private static readonly LocalDate[] Days = [.. Enumerable.Range(-Before, 5000).Select(Start.PlusDays)];

    public static Window[] Lives { get; } = [new(182, 273), new(45, 75)];

    /// <summary>Half of the units of a base are expected to last so many worn days.</summary>
    public static double[] UsualLives { get; } = Array.ConvertAll(Lives, window => new HoldPrior(window.Low, window.High).Quantile(0.5));

    public static string[] Bases { get; } = ["lace", "thin"];

    public static HoldWindow[] HoldWeeks { get; } = [new(4, 8), new(1, 2)];

    public static Window[] Holds { get; } =
        Array.ConvertAll(HoldWeeks, weeks => new Window(7 * weeks.EarliestWeeks, 7 * weeks.LatestWeeks));

    public static double[] UsualHolds { get; } = Array.ConvertAll(HoldWeeks, weeks => new HoldPrior(weeks).Quantile(0.5));

    public static LeadTimePrior[] Leads { get; } = [new(56, 77), new(42, 70)];

    public static RemakeRate Remakes => RemakeRate.Usual;

    public static IReadOnlyDictionary<KnownCovariate, double> LifeFactors { get; } =
        new Dictionary<KnownCovariate, double> { [KnownCovariate.DailyHeat] = 0.8 };

    public static IReadOnlyDictionary<KnownCovariate, double> HoldFactors { get; } =
        new Dictionary<KnownCovariate, double> { [KnownCovariate.OilySkin] = 0.7 };

    public static OpeningDays Opening { get; } = new(new WeekdaySet(0b011_1111), [], DateTimeZone.Utc);

    public static LocalDate DateOf(int day) => Days[day + Before];

    public static int DayOf(LocalDate date) => Period.DaysBetween(Start, date);

    public static bool IsOpen(int day) => Opening.IsOpen(DateOf(day));

    public static int NextOpen(int day)
    {
        while (!IsOpen(day))
            day++;
        return day;
    }
}
