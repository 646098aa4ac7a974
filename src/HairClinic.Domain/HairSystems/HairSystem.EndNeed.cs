using HairClinic.Domain.Clients;

namespace HairClinic.Domain.HairSystems;

public sealed partial class HairSystem
{
    /// <summary>Its wearer died: their own stays with them, and one of the stock is lent as before, no longer on a head.</summary>
    /// <returns>Null for one of the stock: nothing but its bond ended.</returns>
    /// <exception cref="Refusal">It is not on a head.</exception>
    public UnitStep? StayWithWearer(string because, LocalDate on, UnitStepEntry entry)
    {
        Require(UnitState.Bonded);
        if (ClientId is null)
        {
            Move(UnitState.Lent, Dates);
            return null;
        }
        return Step(
            UnitStepKind.ReturnedToClient,
            on,
            entry,
            () =>
            {
                Move(UnitState.Resting, Dates);
                LeaveService(UnitState.ReturnedToClient, on, because);
            }
        );
    }

    /// <summary>What becomes of it now that its client needs none any more. A draft is dropped without asking.</summary>
    /// <param name="after">Null where there is nothing to choose.</param>
    /// <param name="trainingAgreed">Their consent that units of theirs are trained with stands.</param>
    /// <param name="because">What its trail says of why.</param>
    /// <returns>Null where nothing is done: it comes, stays, or is gone.</returns>
    /// <exception cref="Refusal">Nothing was chosen, or what cannot be.</exception>
    public UnitStep? EndNeed(UnitAfterNeed? after, NeedEnd need, bool trainingAgreed, string because, LocalDate on, UnitStepEntry entry)
    {
        if (State == UnitState.Specified)
            return LeaveService(UnitState.Cancelled, on, because, entry);
        var choices = UnitAfterNeedRule.ChoicesFor(State, need);
        if (choices.Count == 0)
            return null;
        if (after is not { } chosen)
            throw new Refusal("Say what becomes of unit {0}.", Serial);
        if (!choices.Contains(chosen))
            throw new Refusal("Unit {0} is {1}: this cannot become of it. Open the page again.", Serial, State);
        if (chosen == UnitAfterNeed.GivenForTraining && !trainingAgreed)
            throw new Refusal("Unit {0} is not given for training: the client has not agreed to that.", Serial);
        return chosen switch
        {
            UnitAfterNeed.CalledOff => LeaveService(UnitState.Cancelled, on, because, entry),
            UnitAfterNeed.GivenBack => LeaveService(UnitState.ReturnedToClient, on, because, entry),
            UnitAfterNeed.Destroyed or UnitAfterNeed.GivenForTraining => LeaveService(UnitState.Retired, on, because, entry),
            UnitAfterNeed.KeptAsSpare when State != UnitState.EmergencySpare => LeaveService(UnitState.EmergencySpare, on, because, entry),
            _ => null,
        };
    }
}

/// <summary>What becomes of a unit whose client needs none any more. It never goes to the stock: nobody else wears it.</summary>
public enum UnitAfterNeed
{
    /// <summary>The order is called off at the workshop.</summary>
    CalledOff,

    /// <summary>The order goes on.</summary>
    LetCome,

    GivenBack,
    KeptAsSpare,
    Destroyed,

    /// <summary>Trained with, by the client's consent.</summary>
    GivenForTraining,

    /// <summary>Nobody wants to say just now: it stays where it is.</summary>
    DecidedLater,
}

/// <summary>What there is to choose for a unit when a need ends.</summary>
public static class UnitAfterNeedRule
{
    /// <summary>None where nothing is asked: a draft is dropped, what is on its way or out for a repair comes first, and what is gone is gone.</summary>
    public static IReadOnlyList<UnitAfterNeed> ChoicesFor(UnitState state, NeedEnd need) =>
        state switch
        {
            UnitState.Ordered or UnitState.Acknowledged or UnitState.Remake => [UnitAfterNeed.CalledOff, UnitAfterNeed.LetCome],
            UnitState.Arrived or UnitState.Inspected =>
            [
                UnitAfterNeed.GivenBack,
                UnitAfterNeed.Destroyed,
                UnitAfterNeed.GivenForTraining,
                UnitAfterNeed.DecidedLater,
            ],
            _ when state.IsBondable() =>
            [
                UnitAfterNeed.GivenBack,
                // Of whoever died nobody needs a spare.
                .. need == NeedEnd.Died ? [] : new[] { UnitAfterNeed.KeptAsSpare },
                UnitAfterNeed.Destroyed,
                UnitAfterNeed.GivenForTraining,
                UnitAfterNeed.DecidedLater,
            ],
            _ => [],
        };
}
