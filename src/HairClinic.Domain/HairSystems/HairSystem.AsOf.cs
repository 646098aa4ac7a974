using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.HairSystems;

public sealed partial class HairSystem
{
    /// <summary>The unit as the records had it at the end of an earlier day; null where nobody knew of it yet.</summary>
    /// <param name="worn">When it was on a head; its bonds are their own record.</param>
    /// <remarks>
    /// Strict: no step of a later day is there. Its arrivals have to be loaded, for how it stood before it was sent back. A row keeps one
    /// day of leaving service: of a unit that was kept for emergencies first, that earlier day is not known any more. Days that were
    /// corrected count as corrected.
    /// </remarks>
    public HairSystem? AsOf(LocalDate day, IReadOnlyCollection<WornPeriod> worn)
    {
        var first = worn.Select(p => (LocalDate?)p.From).Min();
        if (!(Dates.FirstKnownOn() <= day || first <= day))
            return null;
        var sentBackLater = Dates.SentBackOn > day;
        var dates = Dates.Until(day);
        if (sentBackLater)
            dates = BeforeSentBack(dates, day);
        var gone = GoneOn(worn) <= day;
        var was = new HairSystem(Id, Serial, ClientId, UnitKindId, dates.SpecifiedOn)
        {
            Dates = dates,
            State = gone ? StateOutOfService() : StateOn(day, dates, worn),
            RetiredBecause = gone ? RetiredBecause : null,
            EndLook = gone ? EndLook : null,
            Origin = Origin,
            OrderId = OrderId,
            PriceMinor = PriceMinor,
            Currency = Currency,
            RemadeTimes = sentBackLater ? _arrivals.Count(WasSentBackBy(day)) : RemadeTimes,
            RepeatsId = RepeatsId,
            OrderNote = OrderNote,
        };
        was._promises.AddRange(_promises.Where(p => (p.SaidOn ?? Dates.OrderedOn) <= day));
        was._repairs.AddRange(_repairs.Where(r => r.DoneOn <= day));
        return was;
    }

    // A row keeps the last day it was sent back; those before it are told by its arrivals.
    private UnitDates BeforeSentBack(UnitDates dates, LocalDate day)
    {
        var came = _arrivals.Where(a => a.ArrivedOn <= day).MaxBy(a => a.Number);
        var back = _arrivals.Where(WasSentBackBy(day)).Max(a => a.InspectedOn);
        return came is null || WasSentBackBy(day)(came)
            ? dates with
            {
                SentBackOn = back,
            }
            : dates with
            {
                SentBackOn = back,
                ArrivedOn = came.ArrivedOn,
                InspectedOn = came.InspectedOn <= day ? came.InspectedOn : null,
            };
    }

    private static Func<UnitArrival, bool> WasSentBackBy(LocalDate day) =>
        arrival => arrival.Decision == ArrivalDecision.Remake && arrival.InspectedOn <= day;

    // An old book may leave out the day: then it went when it was last taken off.
    private LocalDate? GoneOn(IReadOnlyCollection<WornPeriod> worn) =>
        Dates.RetiredOn ?? (State.IsGone() && worn.Count > 0 && worn.All(p => p.To is not null) ? worn.Max(p => p.To) : null);

    private UnitState StateOutOfService() => State.IsGone() ? State : UnitState.EmergencySpare;

    private UnitState StateOn(LocalDate day, UnitDates dates, IReadOnlyCollection<WornPeriod> worn)
    {
        if (worn.Any(p => p.From <= day && !(p.To <= day)))
            return UnitState.Bonded;
        if (_repairs.Exists(r => r.SentOn <= day && !(r.DoneOn <= day)))
            return UnitState.Away;
        if (worn.Any(p => p.From <= day))
            return UnitState.Resting;
        var dated = (dates with { RetiredOn = null }).LastDatedState();
        return dated == UnitState.Ordered && dates.SentBackOn is not null ? UnitState.Remake : dated;
    }
}
