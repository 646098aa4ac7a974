namespace HairClinic.Domain.Wear;

/// <summary>What a client's events ask of a bond: the day the one that asks for the earliest wants the rebond on.</summary>
internal readonly record struct EventDemand
{
    /// <summary>Whether one asks.</summary>
    public bool Asks { get; private init; }

    public LifeEventDays Event { get; private init; }

    /// <summary>The last day early enough before the event, or the first day after it.</summary>
    public int Day { get; private init; }

    public bool IsAfter { get; private init; }

    /// <summary>The last day early enough for every event that asks.</summary>
    public int LatestAhead { get; private init; }

    /// <summary>The chance, in thousandths, that the bond is sound to the event's last day.</summary>
    public int PerMille { get; private init; }

    /// <summary>The same of a bond that is made on the last day early enough; 1,000 where none comes before the event.</summary>
    public int FreshPerMille { get; private init; }

    /// <param name="cured">The first day wholly after the cure.</param>
    /// <exception cref="ArgumentException">An event has to be judged, and nobody said how the bond holds.</exception>
    public static EventDemand Of(ReadOnlySpan<LifeEventDays> events, int applied, int cured, int closes, Func<int, double>? survival)
    {
        var earliest = default(EventDemand);
        var latestAhead = int.MaxValue;
        foreach (ref readonly var planned in events)
        {
            var through = CivilDayNumber.Number(planned.Through);
            var ahead = CivilDayNumber.Number(planned.From) - planned.DaysAhead;
            // What is over, or so far off that no day of this window is too late for it, need not be judged.
            if (planned.SoundPerMille == 0 || through <= applied || ahead >= closes)
                continue;
            var chance = PerMilleOf(survival, through - applied);
            if (chance >= planned.SoundPerMille)
                continue;
            var after = ahead < cured;
            if (!after)
                latestAhead = Math.Min(latestAhead, ahead);
            var day = after ? Math.Max(through + 1, cured) : ahead;
            if (earliest.Asks && (day > earliest.Day || day == earliest.Day && after))
                continue;
            earliest = new()
            {
                Asks = true,
                Event = planned,
                Day = day,
                IsAfter = after,
                PerMille = chance,
                FreshPerMille = after ? 1000 : PerMilleOf(survival, through - ahead),
            };
        }

        return earliest with
        {
            LatestAhead = latestAhead,
        };
    }

    /// <summary>
    /// The day before which the bond has to be off, where a rebond would come too late for one of the events that ask for it: the first
    /// day of the earliest of them all, because what is taken down for one is not made anew before another.
    /// </summary>
    /// <param name="due">When a rebond would be due.</param>
    public static int? TakeDown(ReadOnlySpan<LifeEventDays> events, int applied, int due)
    {
        var (first, tooLate) = (int.MaxValue, false);
        foreach (ref readonly var planned in events)
        {
            if (!planned.IsTakeDown || CivilDayNumber.Number(planned.Through) <= applied)
                continue;
            var begins = CivilDayNumber.Number(planned.From);
            first = Math.Min(first, begins);
            tooLate |= due > begins - Math.Max(planned.DaysAhead, 1);
        }

        return tooLate ? first : null;
    }

    // Rounded to three places, as it is told; half a thousandth counts up.
    private static int PerMilleOf(Func<int, double>? survival, int days)
    {
        if (survival is null)
            throw new ArgumentException("An event to be ready for needs to know how long bonds hold.", nameof(survival));
        return (int)Math.Round(1000 * survival(days), MidpointRounding.AwayFromZero);
    }
}
