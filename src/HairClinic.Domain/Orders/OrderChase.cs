using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Orders;

/// <summary>Which units on their way somebody has to ask after today, and why. Common practice, no source.</summary>
public static class OrderChase
{
    /// <summary>A workshop that has not acknowledged an order within so many days is asked.</summary>
    public const int AcknowledgedWithinDays = 7;

    /// <param name="promisedFor">What was promised last.</param>
    /// <param name="openQuestions">The workshop waits for an answer.</param>
    /// <param name="backPromisedFor">Of one that is away for a repair.</param>
    /// <returns>In the order in which they press.</returns>
    public static IReadOnlyList<ChaseReason> Reasons(
        UnitState state,
        LocalDate today,
        LocalDate? orderedOn,
        LocalDate? promisedFor,
        int openQuestions,
        LocalDate? backPromisedFor
    ) =>
        [
            .. new (ChaseReason Reason, bool Holds)[]
            {
                (ChaseReason.ToInspect, state is UnitState.Arrived or UnitState.Inspected),
                (ChaseReason.QuestionOpen, state.IsInFlight() && openQuestions > 0),
                (ChaseReason.Late, state.IsInFlight() && promisedFor < today),
                (
                    ChaseReason.NotAcknowledged,
                    state == UnitState.Ordered && orderedOn?.PlusDays(AcknowledgedWithinDays) < today && promisedFor is null
                ),
                (ChaseReason.RepairLate, state == UnitState.Away && backPromisedFor < today),
            }
                .Where(r => r.Holds)
                .Select(r => r.Reason),
        ];
}

/// <summary>Why somebody has to ask after a unit today.</summary>
public enum ChaseReason
{
    /// <summary>It is here and was not held against its order: the clock of the claim runs.</summary>
    ToInspect,

    QuestionOpen,

    /// <summary>The promised day has passed.</summary>
    Late,

    /// <summary>The workshop has said nothing since it was ordered.</summary>
    NotAcknowledged,

    RepairLate,
}
