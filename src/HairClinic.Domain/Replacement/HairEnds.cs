using NodaTime;

namespace HairClinic.Domain.Replacement;

/// <summary>The days by which hair is worn out with 10, 50 and 90 % chance.</summary>
public sealed record HairEnds(LocalDate Early, LocalDate Half, LocalDate Late);
