using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Replacement;

/// <summary>One unit of a client's as far as it bears on days without hair.</summary>
public sealed record UnitAvailability
{
    public LocalDate? OrderedOn { get; init; }

    /// <summary>What the workshop promised first; lateness is judged against it, whatever was promised later.</summary>
    public LocalDate? PromisedFor { get; init; }

    public LocalDate? ArrivedOn { get; init; }

    /// <summary>From this day on it could be bonded; null until then.</summary>
    public LocalDate? ReadyOn { get; init; }

    /// <summary>The last day it could be; null while it still can.</summary>
    public LocalDate? GoneOn { get; init; }

    /// <summary>It was lost or damaged.</summary>
    public bool IsLost { get; init; }

    /// <summary>It was given back to the client, sound: they have it at home.</summary>
    public bool IsAtHome { get; init; }

    /// <summary>It left service worn out, be it as an emergency spare, which can still be bonded.</summary>
    public LocalDate? WornOutOn { get; init; }

    /// <summary>Days from order until it is sure to be on a head: nine in ten lead times of its kind, and preparation.</summary>
    public int DaysNeeded { get; init; }

    /// <param name="worn">First and last day it was on a head; what an old book leaves out is read off it.</param>
    /// <param name="wornOut">An inspection found it so.</param>
    public static UnitAvailability FromRecords(
        UnitState state,
        UnitDates dates,
        LocalDate? promisedFor,
        (LocalDate First, LocalDate? Last)? worn,
        bool wornOut,
        int daysNeeded
    )
    {
        var wasBonded = worn is not null || dates.FirstBondedOn is not null;
        var ready =
            dates.AcceptedOn
            ?? (wasBonded || state.IsBondable() ? dates.ArrivedOn ?? dates.FirstBondedOn ?? worn?.First ?? dates.PreparedOn : null);
        var left = dates.RetiredOn ?? worn?.Last ?? ready;
        return new UnitAvailability
        {
            OrderedOn = dates.OrderedOn,
            PromisedFor = promisedFor,
            ArrivedOn = dates.ArrivedOn ?? ready,
            ReadyOn = ready,
            GoneOn = state.IsGone() ? left : null,
            IsLost = state is UnitState.Lost or UnitState.Damaged,
            IsAtHome = state == UnitState.ReturnedToClient && !wornOut,
            WornOutOn =
                state == UnitState.Retired || wornOut && state is UnitState.EmergencySpare or UnitState.ReturnedToClient ? left : null,
            DaysNeeded = daysNeeded,
        };
    }
}
