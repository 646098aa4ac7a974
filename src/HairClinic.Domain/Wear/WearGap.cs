using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>From the day the last unit is worn out up to, and not including, the day the next can be worn.</summary>
/// <param name="Bare">Nothing is on the head and nothing in house: those are days without hair, where else worn-out hair is on.</param>
public sealed record WearGap(LocalDate From, LocalDate Until, bool Bare = false)
{
    public int Days => Period.DaysBetween(From, Until);
}
