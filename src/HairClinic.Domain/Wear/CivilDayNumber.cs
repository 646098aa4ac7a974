namespace HairClinic.Domain.Wear;

/// <summary>Civil days as whole numbers, so that rules that try many days stay plain integer arithmetic.</summary>
/// <remarks>Day 0 is Monday, 1 January of the year 1 in the ISO calendar; the last is 31 December 9999.</remarks>
internal static class CivilDayNumber
{
    public static int Number(LocalDate day) => day.ToDateOnly().DayNumber;

    public static LocalDate Date(int number) => LocalDate.FromDateOnly(DateOnly.FromDayNumber(number));

    /// <summary>The bit of the day's weekday: Monday is bit 0, Sunday bit 6.</summary>
    public static int WeekdayBit(int number) => 1 << (int)((uint)number % 7);
}
