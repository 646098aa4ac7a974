using NodaTime;

namespace HairClinic.Domain.Replacement;

/// <summary>Civil days in a row on which a client had no hair: neither on the head nor bondable in house.</summary>
/// <param name="From">The first such day of the period.</param>
/// <param name="Through">The last such day of the period, which it may outlast.</param>
public sealed record Gap(LocalDate From, LocalDate Through, GapCause Cause)
{
    public int Days => Period.DaysBetween(From, Through) + 1;
}
