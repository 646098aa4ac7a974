using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>The 10 % and the 90 % day of a predicted end.</summary>
public sealed record WearBand(LocalDate Early, LocalDate Late);
