using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HairClinic.Domain.Tests.Reference;

/// <summary>One row of tz_transitions.csv: a published change of a zone's clocks. The file's first line names its source.</summary>
public sealed record ZoneTransition(
    string Zone,
    Instant At,
    LocalDateTime LocalBefore,
    LocalDateTime LocalAfter,
    string Kind,
    int ShiftMinutes
)
{
    public static IReadOnlyList<ZoneTransition> All { get; } = Read();

    public DateTimeZone DateTimeZone => DateTimeZoneProviders.Tzdb[Zone];

    public static ZoneTransition Of(string zone, string kind) =>
        All.Single(row => row.Zone == zone && row.Kind == kind && Math.Abs(row.ShiftMinutes) <= 60);

    private static List<ZoneTransition> Read() =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "tz_transitions.csv"))
                .Where(line => !line.StartsWith('#'))
                .Skip(1)
                .Select(line => line.Split(','))
                .Where(cells => cells[1].Length > 0)
                .Select(cells => new ZoneTransition(
                    cells[0],
                    InstantPattern.ExtendedIso.Parse(cells[1]).Value,
                    LocalDateTimePattern.ExtendedIso.Parse(cells[4]).Value,
                    LocalDateTimePattern.ExtendedIso.Parse(cells[5]).Value,
                    cells[6],
                    int.Parse(cells[7], CultureInfo.InvariantCulture)
                )),
        ];
}
