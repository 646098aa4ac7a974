namespace HairClinic.Domain.Wear.Watch;

/// <summary>A stream was found to have got worse: from which delivery on, since when that is known, and what became of it.</summary>
/// <remarks>
/// It stands as it was raised until somebody closes it or its units are used up. While it is open its stream raises no other. Its units keep
/// their own shift as long as they are in use, also where the stream is as before again.
/// </remarks>
public sealed class WatchAlarm : PracticeOwned
{
    private WatchAlarm() { }

    /// <param name="cohortFrom">The delivery (or bonding) of the first unit (or bond) that it names.</param>
    /// <param name="units">Named by it when it was raised.</param>
    public WatchAlarm(Guid id, WatchedStream stream, LocalDate cohortFrom, int units, LocalDate raisedOn, double statistic, double limit)
    {
        if (cohortFrom > raisedOn)
            throw new ArgumentOutOfRangeException(nameof(cohortFrom), "A cohort begins before it is named.");
        (Id, Kind, StreamId) = (id, stream.Kind, stream.Id);
        (CohortFrom, Units, RaisedOn, Statistic, Limit) = (cohortFrom, units, raisedOn, statistic, limit);
    }

    public WatchedStreamKind Kind { get; private set; }

    /// <summary>The workshop's, product's or lot's id.</summary>
    public Guid StreamId { get; private set; }

    public LocalDate CohortFrom { get; private set; }

    /// <summary>The last delivery that belongs to it; null while every later one does.</summary>
    public LocalDate? CohortThrough { get; private set; }

    public int Units { get; private set; }
    public LocalDate RaisedOn { get; private set; }
    public double Statistic { get; private set; }

    /// <summary>What the statistic had to pass.</summary>
    public double Limit { get; private set; }

    public LocalDate? ClosedOn { get; private set; }

    /// <summary>Null while it is open, and where its units were used up.</summary>
    public Guid? ClosedBy { get; private set; }

    /// <summary>Null while it is open.</summary>
    public WatchAlarmEnd? End { get; private set; }

    public bool IsOpen => End is null;

    public WatchedStream Stream => new(Kind, StreamId);

    /// <summary>Whether a unit delivered (or a bond made) on that day shares its shift.</summary>
    public bool Names(LocalDate delivered) =>
        End != WatchAlarmEnd.FalseAlarm && new WatchedCohort(Id, StreamId, CohortFrom, CohortThrough).Names(delivered);

    /// <summary>The stream is as before again: what comes later is not the cohort's.</summary>
    /// <param name="through">The last delivery that is.</param>
    /// <exception cref="Refusal">It is closed; or the day lies before the cohort or in the future.</exception>
    public void EndCohort(LocalDate through, Guid by, LocalDate today)
    {
        RefuseIfClosed();
        if (through < CohortFrom)
            throw new Refusal("The last delivery that is worse cannot lie before the first.") { Field = "Through" };
        if (through > today)
            throw new Refusal("That day is still to come.") { Field = "Through" };
        (CohortThrough, ClosedOn, ClosedBy, End) = (through, today, by, WatchAlarmEnd.AsBefore);
    }

    /// <summary>There was nothing: its units are taken as all others.</summary>
    /// <exception cref="Refusal">It is closed.</exception>
    public void Dismiss(Guid by, LocalDate today)
    {
        RefuseIfClosed();
        (ClosedOn, ClosedBy, End) = (today, by, WatchAlarmEnd.FalseAlarm);
    }

    /// <summary>Closes it once nothing of it is in use, waits or is on its way.</summary>
    /// <returns>Whether that closed it.</returns>
    public bool CloseIfUsedUp(int left, LocalDate today)
    {
        if (!IsOpen || left > 0)
            return false;
        (CohortThrough, ClosedOn, End) = (today, today, WatchAlarmEnd.UsedUp);
        return true;
    }

    private void RefuseIfClosed()
    {
        if (!IsOpen)
            throw new Refusal("This alarm is closed already.");
    }
}

/// <summary>How an alarm ended.</summary>
public enum WatchAlarmEnd
{
    /// <summary>The stream is as it was before the decline.</summary>
    AsBefore,

    /// <summary>Somebody looked and found nothing.</summary>
    FalseAlarm,

    /// <summary>Nothing of the cohort is left.</summary>
    UsedUp,
}

/// <summary>What is watched as one: the units of a workshop, or the bonds of an adhesive or of one lot of it.</summary>
public readonly record struct WatchedStream(WatchedStreamKind Kind, Guid Id);

/// <summary>What a stream is of.</summary>
public enum WatchedStreamKind
{
    Workshop,
    Adhesive,
    Lot,
}
