namespace HairClinic.Web.Features.Binder.Sheets;

public enum ColumnType
{
    Text,
    Code,
    Date,

    /// <summary>Several dates in one cell, separated by <c>|</c>, oldest first.</summary>
    Dates,
    Time,
    WholeNumber,
    DecimalNumber,

    /// <summary>A length of time, in minutes.</summary>
    Minutes,
    Money,
    Currency,
    YesNo,
    Choice,
    Weekdays,
    Phone,
    Email,
}
