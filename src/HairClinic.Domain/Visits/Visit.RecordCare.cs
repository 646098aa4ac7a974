using HairClinic.Domain.Bonding;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    /// <summary>
    /// Logs a visit at which the bond stays on: wash and style, consultation, measuring, a lift put down again. What is
    /// seen of the edges is hold data: a sound one moves the last sound day, a lift ends the hold.
    /// </summary>
    /// <param name="worn">The bond on the head; null where there is none.</param>
    /// <param name="seen">What the edges looked like; null where nobody looked.</param>
    /// <exception cref="Refusal">The visit is logged or called off already; edges were seen without a bond; a date is impossible.</exception>
    public void RecordCare(Guid recordId, Bond? worn, EdgeFindings? seen, Salon salon, Instant now, Guid? by, string? note)
    {
        RequireNotLogged();
        var day = salon.DayOf(now);
        RequireDay(day);
        if (seen is not null && worn is null)
            throw new Refusal("No bond is on this head, so no edge can be up or down.");
        if (seen is { Up: true })
            worn!.ReportLift(Lift.Tell(day, seen.LiftedOn, seen.Since, seen.Zone, seen.SpotFixed));
        else if (seen is { Up: false })
            worn!.MarkSeenSound(day);
        Record = new VisitRecord(recordId, Id, seen, now, by, note);
        Finish(day);
    }

    /// <summary>
    /// Takes over what an old book says was seen when a bond came off at this visit. Bond and unit are imported
    /// from their own rows of that book.
    /// </summary>
    /// <param name="waitsKept">Of the bond that was made at this visit.</param>
    /// <exception cref="Refusal">The visit has a record already, or was called off.</exception>
    public void ImportRecord(Guid recordId, Guid removedUnitId, TakeDown found, bool? waitsKept, Instant at, Guid? by)
    {
        RequireNotLogged();
        Record = new VisitRecord(recordId, Id, removedUnitId, found, at, by, note: null);
        Record.SetDryingWaitsKept(waitsKept);
    }
}

/// <summary>What the edges of a bond looked like at a visit that left it on.</summary>
/// <param name="Up">An edge was up.</param>
/// <param name="LiftedOn">The day the client noticed it; null where not known.</param>
/// <param name="SpotFixed">It was put down again without a new bond.</param>
public sealed record EdgeFindings(bool Up, LocalDate? LiftedOn, LiftZone? Zone, bool SpotFixed)
{
    public static readonly EdgeFindings Sound = new(false, null, null, false);

    /// <summary>Where the day is not known: about when.</summary>
    public SinceWhen? Since { get; init; }
}
