using HairClinic.Web.Ui;
using NodaTime.Text;

namespace HairClinic.Web.Features.Visits;

/// <summary>What the dialog looks for; none of it is saved.</summary>
/// <param name="Chair">The chair of a gap that was tapped, with its <paramref name="Start"/>.</param>
public sealed record BookVisitCriteria(LocalDate Around, int WithinDays, Guid? OnlyPerson = null, Guid? Chair = null, Instant? Start = null)
{
    /// <summary>As the address says it; what cannot be read is left out.</summary>
    public static BookVisitCriteria FromQuery(BookVisit.Screen screen, string? around, Guid? chair, string? start)
    {
        if (start is not null && InstantPattern.General.Parse(start).TryGetValue(default, out var instant))
            return new(instant.InZone(screen.Zone).Date, 0, null, chair, instant);
        return new(around is not null && Dates.TryParseIso(around, out var day) ? LocalDate.Max(day, screen.Today) : screen.Today, 7);
    }

    public SlotRequest ToSlotRequest(BookVisit.Screen screen, BookVisit.ServiceChoice service, BookVisit.ClientView? client) =>
        new(screen.SalonId, screen.Zone, service.Id, service.Steps, Around, WithinDays)
        {
            ClientId = client?.Id,
            OnlyPerson = OnlyPerson,
            UsualPerson = client?.UsualPerson,
            OnlyChair = Chair,
            Start = Start,
        };
}
