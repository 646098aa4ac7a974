using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A booked visit as it goes into a calendar.</summary>
public sealed record CalendarVisit(Guid Id, Instant StartsAt, Instant EndsAt, string Zone, string? Address);

/// <summary>A day something is due that is not booked yet.</summary>
public sealed record CalendarDueDay(Guid Id, LocalDate On);

/// <summary>Writes dates as iCalendar (RFC 5545), in the salon's own time with its zone's rules.</summary>
public static class CalendarFileWriter
{
    public static string Write(
        IReadOnlyList<CalendarVisit> visits,
        CalendarDueDay? due,
        string appointment,
        string toBook,
        (string Name, string Address) from,
        Instant now
    )
    {
        var stamp = new CalDateTime(now.ToDateTimeUtc());
        var organiser = new Organizer($"mailto:{from.Address}") { CommonName = from.Name };
        var calendar = new Ical.Net.Calendar { Method = "PUBLISH", ProductId = "-//My dates//EN" };
        foreach (var zone in visits.GroupBy(v => v.Zone))
            calendar.AddTimeZone(VTimeZone.FromDateTimeZone(zone.Key, zone.Min(v => v.StartsAt).ToDateTimeUtc().AddYears(-1), false));
        foreach (var visit in visits)
            Add(visit.Id, appointment, Local(visit.StartsAt, visit.Zone), Local(visit.EndsAt, visit.Zone)).Location = visit.Address;
        if (due is not null)
            Add(due.Id, toBook, new(due.On.ToDateOnly()), new(due.On.PlusDays(1).ToDateOnly())).Transparency = TransparencyType.Transparent;
        return new CalendarSerializer().SerializeToString(calendar)!;

        CalendarEvent Add(Guid id, string summary, CalDateTime start, CalDateTime end)
        {
            var added = new CalendarEvent
            {
                Uid = $"{id:D}@dates",
                DtStamp = stamp,
                Summary = summary,
                Start = start,
                End = end,
                Organizer = organiser,
            };
            calendar.Events.Add(added);
            return added;
        }
    }

    private static CalDateTime Local(Instant instant, string zone) =>
        new(instant.InZone(DateTimeZoneProviders.Tzdb[zone]).ToDateTimeUnspecified(), zone);
}
