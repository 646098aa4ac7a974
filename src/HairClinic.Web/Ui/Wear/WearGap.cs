using NodaTime;

namespace HairClinic.Web.Ui.Wear;

/// <summary>From the day the last unit is worn out up to, and not including, the day the next can be worn.</summary>
public sealed record WearGap(LocalDate From, LocalDate Until)
{
    public int Days => Period.DaysBetween(From, Until);
}
