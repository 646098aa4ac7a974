using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>A visit as a tick on the line; the label is for whoever points at it or listens.</summary>
public sealed record WearVisit(LocalDate On, string Label);
