using HairClinic.Domain.Bonding;
using NodaTime;

namespace HairClinic.Domain.Visits;

/// <summary>What was found when the old bond came off.</summary>
/// <param name="FoundLifted">An edge was up already.</param>
/// <param name="LiftedOn">The day the client noticed it; always asked.</param>
public sealed record TakeDown(InspectionGrades Grades, bool FoundLifted, LocalDate? LiftedOn, LiftZone? LiftZone, RemovalReason Because)
{
    /// <summary>Why the bond came off: one that was only due and found lifted came off because it had lifted.</summary>
    public RemovalReason Reason => FoundLifted && Because == RemovalReason.Scheduled ? RemovalReason.Lifted : Because;

    /// <summary>The lift it tells of, on the day it was found; null where the edges were sound.</summary>
    public Lift? LiftFoundOn(LocalDate day) => FoundLifted ? new Lift(day, LiftedOn, LiftZone, SpotFixed: false) : null;
}
