using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>A point of the fading bar: the chance, 0 to 1, that the unit still wears on this day.</summary>
public sealed record WearFade(LocalDate On, double Survival);
