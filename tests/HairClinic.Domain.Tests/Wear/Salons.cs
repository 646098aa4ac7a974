using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Givens shared by the examples: an invented salon and its usual window.</summary>
internal static class Salons
{
    public static readonly WeekdaySet TuesdayToSaturday = WeekdaySet.Of(
        IsoDayOfWeek.Tuesday,
        IsoDayOfWeek.Wednesday,
        IsoDayOfWeek.Thursday,
        IsoDayOfWeek.Friday,
        IsoDayOfWeek.Saturday
    );

    public static readonly HoldWindow FourToEightWeeks = new(4, 8);

    public static OpeningDays OpenTuesdayToSaturday(params DateInterval[] closures) =>
        new(TuesdayToSaturday, closures, DateTimeZoneProviders.Tzdb["Europe/London"]);

    public static OpeningDays OpenDaily(string zone, params DateInterval[] closures) =>
        new(WeekdaySet.Every, closures, DateTimeZoneProviders.Tzdb[zone]);

    public static DateInterval Closed(LocalDate first, LocalDate last) => new(first, last);
}
