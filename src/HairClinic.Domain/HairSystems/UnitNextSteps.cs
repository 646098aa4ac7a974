namespace HairClinic.Domain.HairSystems;

/// <summary>What can come next for a unit where it stands: the usual step first. What a step refuses beyond that, it says itself.</summary>
public static class UnitNextSteps
{
    /// <param name="isNobodys">Of no client: it can be lent or given to one.</param>
    /// <param name="onLoan">A client has it for a time.</param>
    public static IReadOnlyList<UnitStepKind> After(UnitState state, UnitCleaning? cleaning, bool isNobodys, bool onLoan) =>
        state switch
        {
            UnitState.Specified => [UnitStepKind.Ordered, UnitStepKind.Cancelled],
            UnitState.Ordered =>
            [
                UnitStepKind.Arrived,
                UnitStepKind.Acknowledged,
                UnitStepKind.Promised,
                UnitStepKind.Shipped,
                UnitStepKind.Cancelled,
                UnitStepKind.Lost,
            ],
            UnitState.Acknowledged or UnitState.Remake =>
            [
                UnitStepKind.Arrived,
                UnitStepKind.Promised,
                UnitStepKind.Shipped,
                UnitStepKind.Cancelled,
                UnitStepKind.Lost,
            ],
            UnitState.Shipped => [UnitStepKind.Arrived, UnitStepKind.Promised, UnitStepKind.Lost],
            UnitState.Arrived or UnitState.Inspected => [UnitStepKind.Inspected, UnitStepKind.Moved, UnitStepKind.Lost],
            UnitState.Away => [UnitStepKind.BackFromRepair, UnitStepKind.Lost],
            UnitState.Lent => [UnitStepKind.BackFromLoan, UnitStepKind.Lost],
            UnitState.Lost or UnitState.ReturnedToClient => [UnitStepKind.Found],
            UnitState.Bonded => [],
            UnitState.Retired or UnitState.Damaged => [UnitStepKind.Moved],
            UnitState.Refused or UnitState.Cancelled => [],
            _ => [.. InHouse(state, cleaning, isNobodys, onLoan)],
        };

    /// <summary>The step that is waited for, where there is one: what is in house and clean waits for nothing.</summary>
    public static UnitStepKind? Awaited(UnitState state, UnitCleaning? cleaning, bool onLoan) =>
        After(state, cleaning, isNobodys: false, onLoan).Cast<UnitStepKind?>().FirstOrDefault() is { } first && Waits.Contains(first)
            ? first
            : null;

    private static readonly UnitStepKind[] Waits =
    [
        UnitStepKind.Ordered,
        UnitStepKind.Arrived,
        UnitStepKind.Inspected,
        UnitStepKind.Prepared,
        UnitStepKind.Cleaned,
        UnitStepKind.BackFromRepair,
        UnitStepKind.BackFromLoan,
        UnitStepKind.Found,
    ];

    private static IEnumerable<UnitStepKind> InHouse(UnitState state, UnitCleaning? cleaning, bool isNobodys, bool onLoan)
    {
        if (onLoan)
            yield return UnitStepKind.BackFromLoan;
        if (cleaning is UnitCleaning.ToBeCleaned or UnitCleaning.Drying)
            yield return UnitStepKind.Cleaned;
        if (cleaning is UnitCleaning.ToBeCleaned)
            yield return UnitStepKind.LeftToDry;
        if (state == UnitState.Accepted)
            yield return UnitStepKind.Prepared;
        if (isNobodys && !onLoan)
        {
            if (cleaning is null or UnitCleaning.Clean)
                yield return UnitStepKind.Lent;
            yield return UnitStepKind.GivenToClient;
        }
        yield return UnitStepKind.Moved;
        yield return UnitStepKind.SentForRepair;
        if (cleaning is null or UnitCleaning.Clean)
            yield return UnitStepKind.SetForCleaning;
        if (state != UnitState.EmergencySpare)
            yield return UnitStepKind.KeptAsSpare;
        yield return UnitStepKind.Retired;
        yield return UnitStepKind.Lost;
        yield return UnitStepKind.Damaged;
        yield return UnitStepKind.ReturnedToClient;
    }
}
