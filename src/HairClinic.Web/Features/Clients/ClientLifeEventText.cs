using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Clients;

/// <summary>A client's event as screens name it.</summary>
public static class ClientLifeEventText
{
    public static string FormatDates(LifeEvent planned, LocalDate today, IStringLocalizer words)
    {
        var from = Dates.Day(planned.From, today);
        string days = planned.From == planned.To ? from : words["{0} to {1}", from, Dates.Day(planned.To, today)];
        return planned.Away ? words["{0}, away", days] : days;
    }
}
