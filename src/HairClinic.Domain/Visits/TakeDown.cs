using HairClinic.Domain.Bonding;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Visits;

/// <summary>What was found when the old bond came off.</summary>
/// <param name="Grades">Nothing said of an item is nothing said: blank, never 0.</param>
/// <param name="FoundLifted">An edge was up already.</param>
/// <param name="LiftedOn">The day the client noticed it, or the day it came off at home; always asked.</param>
public sealed record TakeDown(InspectionGrades Grades, bool FoundLifted, LocalDate? LiftedOn, LiftZone? LiftZone, RemovalReason Because)
{
    /// <summary>The grades were filled in as they were last time, and none was changed; null where that was not asked.</summary>
    public bool? GradesCopied { get; init; }

    /// <summary>What was found of the unit last time: where nobody looked now, it is what is known.</summary>
    public InspectionGrades? GradesBefore { get; init; }

    /// <summary>Where the day of the lift is not known: about when.</summary>
    public SinceWhen? LiftedSince { get; init; }

    /// <summary>Of a unit that is found worn out: the first day on which it looked so, where somebody knows.</summary>
    public LocalDate? WornOutOn { get; init; }

    /// <summary>Where that day is not known: about when.</summary>
    public SinceWhen? WornOutSince { get; init; }

    /// <summary>Why the bond came off: one that was only due and found lifted came off because it had lifted.</summary>
    public RemovalReason Reason => FoundLifted && Because == RemovalReason.Scheduled ? RemovalReason.Lifted : Because;

    /// <summary>An edge was up, or the whole unit had come off.</summary>
    public bool HadLifted => FoundLifted || Because.CameOffByItself();

    /// <summary>Nobody looks at a unit that is lost.</summary>
    public InspectionGrades SeenGrades => Because == RemovalReason.LostAtHome ? InspectionGrades.NotLookedAt : Grades;

    /// <summary>As it was seen now, and last time where nobody looked.</summary>
    public InspectionGrades KnownGrades => SeenGrades.OrAsBefore(GradesBefore);

    /// <summary>The last day it was worn: of what came off at home the day by which it did so, where somebody remembers.</summary>
    /// <param name="day">The day of the visit.</param>
    public LocalDate OffOn(LocalDate day) => Because.CameOffByItself() ? ToLift(day)!.UpBy : day;

    /// <summary>The lift it tells of, on the day it was found; null where the edges were sound.</summary>
    public Lift? ToLift(LocalDate day) => HadLifted ? Lift.Tell(day, LiftedOn, LiftedSince, LiftZone, spotFixed: false) : null;
}
