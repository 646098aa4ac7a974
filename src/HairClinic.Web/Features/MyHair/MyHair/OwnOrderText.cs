using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.MyHair;

/// <summary>How the next unit is getting on, in kind words; no maker, no price. The localiser's keys.</summary>
public static class OwnOrderText
{
    public static string Of(UnitState state) =>
        state switch
        {
            UnitState.Ordered => "It is ordered.",
            UnitState.Acknowledged => "It is being made.",
            UnitState.Shipped => "It is on its way to us.",
            UnitState.Arrived or UnitState.Inspected => "It has arrived and is being looked at.",
            UnitState.Remake => "We were not happy with it yet, so it is being made again.",
            _ => "It is here and waits for you.",
        };

    /// <summary>A promise is told only while something is awaited and the day is not past.</summary>
    public static LocalDate? Awaited(OwnUnitFacts unit, LocalDate today) =>
        unit.State.IsInFlight() && unit.PromisedFor >= today ? unit.PromisedFor : null;
}
