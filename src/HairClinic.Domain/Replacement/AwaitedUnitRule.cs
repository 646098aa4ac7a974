namespace HairClinic.Domain.Replacement;

/// <summary>
/// Whether somebody waited for a unit when it came. Only then does the time until it was bonded say how long preparation takes: a
/// spare lies in a drawer until it is needed.
/// </summary>
/// <remarks>
/// It is judged by what stood on the day of the arrival alone. Whatever came after, such as the old unit going on once more, may have
/// come about because the new one was not ready, and leaving those units out would make preparation look shorter than it is. But once
/// another unit is on the head nobody waits any more: until then it took, and the rest is time in a drawer.
/// </remarks>
public static class AwaitedUnitRule
{
    /// <param name="others">The client's other units.</param>
    public static bool WasAwaited(LocalDate arrivedOn, IEnumerable<HairInHouse> others) => others.All(o => !o.WearsOn(arrivedOn));

    /// <summary>Days from arrival until a unit was first bonded; of one that is not yet, or went without, or after another, at least so many.</summary>
    /// <param name="othersBondedOn">The days on which the client's other units were bonded.</param>
    /// <returns>
    /// Null where the records do not say: no arrival is known, or it was worn before it came, or on that very day, as old books have it
    /// where nobody wrote down the arrival.
    /// </returns>
    public static (int Days, bool Bonded)? Observe(
        LocalDate? arrivedOn,
        LocalDate? firstBondedOn,
        LocalDate? goneOn,
        IEnumerable<LocalDate> othersBondedOn,
        LocalDate today
    )
    {
        var until = firstBondedOn ?? goneOn ?? today;
        if (arrivedOn is not { } came || came > until || came == firstBondedOn)
            return null;
        var served = othersBondedOn.Where(day => day >= came && day < until).Select(day => (LocalDate?)day).Min();
        return (Period.DaysBetween(came, served ?? until), served is null && firstBondedOn is not null);
    }
}

/// <summary>A unit as hair that could be worn: from when, and until when.</summary>
/// <param name="From">It is here, and could be bonded; null while it is not.</param>
/// <param name="GoneOn">The day it left service, or was kept for emergencies; null while it has not.</param>
/// <param name="WornOutOn">The first day on which a look found it so; null where none did.</param>
public readonly record struct HairInHouse(LocalDate? From, LocalDate? GoneOn, LocalDate? WornOutOn)
{
    /// <summary>On the day it goes it is not counted on any more, nor on the day it is found worn out.</summary>
    public bool WearsOn(LocalDate day) => From <= day && !(GoneOn <= day) && !(WornOutOn <= day);
}
