using System.Text;
using System.Text.RegularExpressions;
using HairClinic.Web.Features.MyHair;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.DatesFile;

namespace HairClinic.Web.Tests.Features.MyHair.DatesFile;

/// <summary>Against RFC 5545 and RFC 7986's privacy advice as read, not against the library that wrote it.</summary>
public sealed class DatesFileTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task The_booked_visit_is_an_event_that_says_nothing_of_what_it_is_for()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var text = await OpenAsync(clinic);

        var lines = Unfold(text!);
        Assert.Equal("BEGIN:VCALENDAR", lines[0]);
        // RFC 5545, 3.6: VERSION and PRODID are required once; 3.6.1: UID and DTSTAMP in each event.
        Assert.Single(lines, "VERSION:2.0");
        Assert.Single(lines, l => l.StartsWith("PRODID:", StringComparison.Ordinal));
        Assert.Single(lines, $"UID:{_own.Visit.Id:D}@dates");
        Assert.Contains("DTSTAMP:20270203T100000Z", lines);
        Assert.Contains("DTSTART;TZID=Europe/London:20270212T100000", lines);
        Assert.Contains("DTEND;TZID=Europe/London:20270212T113000", lines);
        Assert.Contains("SUMMARY:Appointment", lines);
        foreach (var word in new[] { "rebond", "hair", "lift", "salon", "Elm Row", "stylist", _own.Rebond.Name })
            Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_zone_is_defined_with_both_of_its_offsets()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var lines = Unfold((await OpenAsync(clinic))!);

        // RFC 5545, 3.6.5: a TZID used must be defined, with at least one STANDARD or DAYLIGHT that has these three.
        Assert.Contains("TZID:Europe/London", lines);
        var zone = lines.SkipWhile(l => l != "BEGIN:VTIMEZONE").TakeWhile(l => l != "END:VTIMEZONE").ToList();
        Assert.Contains("BEGIN:STANDARD", zone);
        Assert.Contains("BEGIN:DAYLIGHT", zone);
        Assert.Contains("TZOFFSETTO:+0100", zone);
        Assert.Contains("TZOFFSETTO:+0000", zone);
    }

    [Fact]
    public void Lines_end_in_CRLF_and_are_at_most_75_octets()
    {
        var visit = new CalendarVisit(
            Guid.CreateVersion7(),
            OwnScene.BookedAt,
            OwnScene.FreeAt,
            "America/New_York",
            "Número 12, Calle de los Álamos y de las Acacias; segundo piso, puerta de la izquierda, detrás del jardín"
        );

        var text = CalendarFileWriter.Write(
            [visit],
            new CalendarDueDay(Guid.CreateVersion7(), new LocalDate(2027, 3, 1)),
            "Cita",
            "Por reservar",
            ("Sus citas", "desk@example.test"),
            OwnScene.BookedAt
        );

        Assert.DoesNotMatch(new Regex("(?<!\r)\n"), text);
        // RFC 5545, 3.1: lines of text SHOULD NOT be longer than 75 octets, excluding the line break.
        Assert.All(text.Split("\r\n"), l => Assert.InRange(Encoding.UTF8.GetByteCount(l), 0, 75));
        // 3.3.11: commas and semicolons in text are escaped; 3.3.4: a day alone is a DATE.
        Assert.Contains(@"Acacias\; segundo piso\, puerta", string.Join('\n', Unfold(text)), StringComparison.Ordinal);
        Assert.Contains("DTSTART;VALUE=DATE:20270301", Unfold(text));
    }

    private static List<string> Unfold(string text) => [.. Regex.Replace(text, "\r\n[ \t]", "").Split("\r\n")];

    private Task<string?> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, string?>(_own.Acting(clinic), slice => slice.OpenAsync(TestContext.Current.CancellationToken));
}
