using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>When a client is next washed and styled.</summary>
/// <param name="On">The day to book.</param>
/// <param name="WithRebond">One trip: it is done at the rebond due that day, and needs no visit of its own.</param>
public readonly record struct WashDay(LocalDate On, bool WithRebond);
