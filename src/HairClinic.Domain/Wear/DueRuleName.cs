using System.Text.Json.Serialization;

namespace HairClinic.Domain.Wear;

/// <summary>The rules that can shape a due date, in the order they are applied and told.</summary>
/// <remarks>
/// Stored by name: rename only with a migration. Each member says what <see cref="DueReason.From"/>,
/// <see cref="DueReason.To"/>, <see cref="DueReason.Amount"/> and <see cref="DueReason.UpTo"/> hold.
/// </remarks>
[JsonConverter(typeof(JsonStringEnumConverter<DueRuleName>))]
public enum DueRuleName
{
    /// <summary>From the day of application to the window's last day; amount and up-to are its weeks.</summary>
    HoldWindow,

    /// <summary>From the day of application to the target; amount is days. No bond of this client was used.</summary>
    TargetFromPrior,

    /// <summary>From the target of an unknown client to this one's; amount is days, up-to the client's own bonds behind it.</summary>
    TargetFromOwnBonds,

    /// <summary>From the day of application to the target; amount is days. The practice's bonds tell, none of this client's.</summary>
    TargetFromPractice,

    /// <summary>From the target wished to the window's last day.</summary>
    TargetCappedAtCloses,

    /// <summary>From a target inside the cure to the first whole day after it; amount is the cure's hours.</summary>
    HeldUntilCured,

    /// <summary>
    /// From an event's first to its last day; amount is the chance, in thousandths, that the bond is sound to the last, up-to the least
    /// that the event wants.
    /// </summary>
    EventBeyondHold,

    /// <summary>From the target to the last day early enough; amount is the days between that day and the event.</summary>
    PulledAheadOfEvent,

    /// <summary>From the target, which is early enough, to the last day that would be; amount is the days between that day and the event.</summary>
    KeptAheadOfEvent,

    /// <summary>From the target to the first day after the event; amount is the days before it on which it is too late for a rebond.</summary>
    MovedAfterEvent,

    /// <summary>
    /// From the last day early enough to the event's last; amount is the chance, in thousandths, that a bond made on the first is sound
    /// to the second, up-to the least that the event wants.
    /// </summary>
    FreshBondFallsShort,

    /// <summary>From the target to the take-down before an operation, a scan or a treatment; no bond is made then.</summary>
    TakeDownBeforeEvent,

    /// <summary>From the usual first day of the window to the target, which lies before it and now opens it.</summary>
    OpensEarlyAtTarget,

    /// <summary>From the first to the last day of an absence that ruled out the day otherwise chosen.</summary>
    MovedOutOfAbsence,

    /// <summary>From the target to an open day on a weekday the client prefers.</summary>
    MovedToPreferredWeekday,

    /// <summary>From the target to the nearest open day in the window.</summary>
    MovedToOpenDay,

    /// <summary>From the target to the last open day before the window.</summary>
    MovedBeforeWindow,

    /// <summary>From and to are the bare target: no day could be found, a person must choose.</summary>
    NoOpenDay,
}
