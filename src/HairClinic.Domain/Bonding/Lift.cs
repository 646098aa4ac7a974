using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Bonding;

/// <summary>
/// A lift as it became known. The day may be unknown: then it lies after the last day the bond was
/// known to be sound and no later than the day it was reported, or as much nearer as somebody remembers.
/// </summary>
/// <param name="ReportedOn">The day someone told us, or the visit that found it.</param>
/// <param name="LiftedOn">The day it lifted, where the client noticed.</param>
/// <param name="Zone">Where the edge came up.</param>
/// <param name="SpotFixed">Put down again without a new bond; the hold still ended here.</param>
/// <exception cref="Refusal">It lifted after it was reported.</exception>
public sealed record Lift(LocalDate ReportedOn, LocalDate? LiftedOn, LiftZone? Zone, bool SpotFixed)
{
    public LocalDate? LiftedOn { get; init; } =
        LiftedOn > ReportedOn ? throw new Refusal("It cannot have lifted after it was reported.") : LiftedOn;

    /// <summary>Where the day is not known, but about when: it lifted after this day.</summary>
    public LocalDate? EarliestOn { get; init; }

    /// <summary>And by this one.</summary>
    public LocalDate? LatestOn { get; init; }

    /// <summary>The day by which it was up.</summary>
    public LocalDate UpBy => LiftedOn ?? LatestOn ?? ReportedOn;

    /// <param name="since">About when, where the day is not known; null where nobody was asked.</param>
    public static Lift Tell(LocalDate reportedOn, LocalDate? liftedOn, SinceWhen? since, LiftZone? zone, bool spotFixed)
    {
        var lift = new Lift(reportedOn, liftedOn, zone, spotFixed);
        return liftedOn is null && since?.DaysMeant(reportedOn) is { } meant ? lift.Between(meant.Earliest, meant.Latest) : lift;
    }

    /// <summary>The day is not known, but lies after one and no later than another.</summary>
    /// <exception cref="Refusal">The second is before the first, or after the report.</exception>
    public Lift Between(LocalDate earliest, LocalDate latest)
    {
        if (latest > ReportedOn)
            throw new Refusal("It cannot have lifted after it was reported.");
        if (earliest > latest)
            throw new Refusal("It cannot have lifted by {0} and after {1}.", latest, earliest);
        return this with { EarliestOn = earliest, LatestOn = latest };
    }

    /// <summary>What a later telling of the same lift adds: its day, or about its day, where this one left it open.</summary>
    /// <param name="soundOn">The last day on which the bond was known to be sound.</param>
    internal Lift AddDay(Lift later, LocalDate soundOn)
    {
        if (LiftedOn is not null)
            return this;
        if (later.LiftedOn <= ReportedOn)
            return this with { LiftedOn = later.LiftedOn, EarliestOn = null, LatestOn = null, Zone = Zone ?? later.Zone };
        return LatestOn is null && later.LatestOn >= soundOn && later.EarliestOn < ReportedOn
            ? this with
            {
                EarliestOn = later.EarliestOn,
                LatestOn = LocalDate.Min(later.LatestOn.Value, ReportedOn),
                Zone = Zone ?? later.Zone,
            }
            : this;
    }
}
