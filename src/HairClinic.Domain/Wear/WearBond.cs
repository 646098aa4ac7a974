using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>One spell on the head, with the window in which its rebond falls due.</summary>
public sealed record WearBond(
    LocalDate AppliedOn,
    LocalDate Opens,
    LocalDate DueOn,
    LocalDate Closes,
    LocalDate? RemovedOn = null,
    LocalDate? LiftedOn = null
);
