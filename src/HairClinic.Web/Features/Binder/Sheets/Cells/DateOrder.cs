namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>How dates that end in a year are read. Dates that begin with a four-digit year are year, month, day under all three.</summary>
public enum DateOrder
{
    YearMonthDay,
    DayMonthYear,
    MonthDayYear,
}
