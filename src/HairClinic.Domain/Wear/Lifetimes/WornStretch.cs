using NodaTime;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A spell on a head, for counting worn days: from application to removal, or still going on.</summary>
public readonly record struct WornStretch(Guid UnitId, LocalDate From, LocalDate? To)
{
    /// <summary>Worn days up to and without that day.</summary>
    public static int WornBy(IEnumerable<WornStretch> stretches, LocalDate day) =>
        stretches.Sum(s => Math.Max(0, Period.DaysBetween(s.From, s.To < day ? s.To.Value : day)));
}
