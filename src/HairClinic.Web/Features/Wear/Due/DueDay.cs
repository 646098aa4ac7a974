using NodaTime;

namespace HairClinic.Web.Features.Wear;

/// <summary>Salons in which it is the same day. A practice across the date line has several such days at once.</summary>
/// <param name="Began">When that day began in the first of them.</param>
/// <param name="Soon">The last day a window may open on to be listed as opening soon.</param>
public sealed record DueDay(LocalDate Today, Instant Began, LocalDate Soon, IReadOnlyList<Guid> Salons);
