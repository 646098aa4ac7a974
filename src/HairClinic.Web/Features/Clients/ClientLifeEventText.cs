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

    /// <summary>What it says about bonds; null where it says nothing.</summary>
    public static string? FormatPause(LifeEvent planned, LocalDate today, IStringLocalizer words) =>
        !planned.PausesBonding ? null
        : planned.BondingAgainFrom is { } again ? words["Bonds may be made again from {0}.", Dates.Day(again, today)].Value
        : words["Bonding is on hold until somebody allows it again."].Value;

    /// <summary>Not over yet, or still keeping from bonding; soonest first.</summary>
    public static List<LifeEvent> FilterCurrent(IEnumerable<LifeEvent> events, LocalDate today) =>
        [.. events.Where(e => e.To >= today || e.KeepsFromBondingOn(today)).OrderBy(e => e.From)];
}
