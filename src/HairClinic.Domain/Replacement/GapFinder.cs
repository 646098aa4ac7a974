using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Replacement;

/// <summary>Finds the days on which a client had no hair.</summary>
/// <remarks>
/// A day is covered when a unit was on the head, or bondable in house, at any time of it: a day off with a unit resting in
/// house is the client's own choice. Clients are watched from their first bond until they leave. A client who takes
/// their last unit home, sound, is not watched until the next one: that was their choice. One who wears nothing for longer
/// than the practice waits, and has not come back, is taken to have left when the cover ended.
/// </remarks>
public static class GapFinder
{
    /// <param name="through">The last day of the period: today.</param>
    public static ClientPastGaps Find(HairHistory client, LocalDate from, LocalDate through)
    {
        if (client.Bonds.Count == 0)
            return new ClientPastGaps(0, [], HasLapsed: false);
        var begin = CivilDayNumber.Number(from);
        var (first, end, lapsed, uncovered) = Trace(client, through);
        var (gaps, away) = (new List<RecordedGap>(), 0);
        foreach (var (day, last, isAway) in uncovered)
        {
            var (since, ended) = (Math.Max(day, begin), CivilDayNumber.Date(day).PlusDays(-1));
            if (last < since)
                continue;
            if (isAway)
                away += last - since + 1;
            else
                gaps.Add(new(CivilDayNumber.Date(since), CivilDayNumber.Date(last), CauseOf(client, ended)));
        }
        return new ClientPastGaps(Math.Max(0, end - Math.Max(begin, first) + 1 - away), gaps, lapsed);
    }

    /// <summary>The same day by day: one for each day of the period.</summary>
    public static DayOfHair[] Days(HairHistory client, LocalDate from, LocalDate through)
    {
        var begin = CivilDayNumber.Number(from);
        var days = new DayOfHair[Math.Max(0, CivilDayNumber.Number(through) - begin + 1)];
        if (client.Bonds.Count == 0)
            return days;
        var (first, end, _, uncovered) = Trace(client, through);
        Fill(first, end, DayOfHair.Covered);
        foreach (var (day, last, isAway) in uncovered)
            Fill(day, last, isAway ? DayOfHair.NotWatched : DayOfHair.Without);
        return days;

        void Fill(int since, int until, DayOfHair kind)
        {
            for (var day = Math.Max(0, since - begin); day <= until - begin; day++)
                days[day] = kind;
        }
    }

    // From the first bond until they left: the stretches that nothing covers, and whether the client had their hair at home.
    private static (int First, int End, bool HasLapsed, List<(int From, int To, bool IsAway)> Uncovered) Trace(
        HairHistory client,
        LocalDate through
    )
    {
        var (first, end) = (CivilDayNumber.Number(client.Bonds.Min(b => b.AppliedOn)), CivilDayNumber.Number(through));
        if (client.LeftOn is { } left)
            end = Math.Min(end, CivilDayNumber.Number(left) - 1);
        var covers = Covers(client, first, end);
        var lastCovered = covers.Count == 0 ? first - 1 : covers.Max(c => c.To);
        var lapsed = LapsedClientRule.HasLapsed(CivilDayNumber.Date(lastCovered), CivilDayNumber.Date(end));
        if (lapsed)
            end = lastCovered;
        var (uncovered, next) = (new List<(int, int, bool)>(), first);
        foreach (var (since, until) in covers)
        {
            Note(since - 1);
            next = Math.Max(next, until + 1);
        }
        Note(end);
        return (first, end, lapsed, uncovered);

        void Note(int last)
        {
            if (last < next)
                return;
            var ended = CivilDayNumber.Date(next).PlusDays(-1);
            uncovered.Add((next, last, client.Units.Any(u => u.IsAtHome && u.GoneOn == ended)));
        }
    }

    // What is on the head and what lies in house, by its first day.
    private static List<(int From, int To)> Covers(HairHistory client, int first, int end)
    {
        var bonds = client.Bonds.Select(b => (From: b.AppliedOn, To: b.RemovedOn));
        var units = client.Units.Where(u => u.ReadyOn is not null).Select(u => (From: u.ReadyOn!.Value, To: u.GoneOn));
        return
        [
            .. bonds
                .Concat(units)
                .Select(c =>
                    (
                        From: Math.Max(first, CivilDayNumber.Number(c.From)),
                        To: Math.Min(end, c.To is { } to ? CivilDayNumber.Number(to) : end)
                    )
                )
                .Where(c => c.From <= c.To)
                .OrderBy(c => c.From),
        ];
    }

    private static GapCause CauseOf(HairHistory client, LocalDate ended)
    {
        if (client.Units.Any(u => u.IsLost && u.GoneOn == ended))
            return GapCause.LostOrDamaged;
        var awaited = client
            .Units.Where(u => !(u.ReadyOn <= ended) && !(u.GoneOn <= ended) && (u.OrderedOn ?? u.PromisedFor) <= ended)
            .MinBy(u => u.OrderedOn ?? u.PromisedFor);
        if (awaited is null)
            return GapCause.NothingOnOrder;
        if (awaited.PromisedFor <= ended && !(awaited.ArrivedOn <= awaited.PromisedFor))
            return GapCause.CameAfterPromise;
        return awaited.OrderedOn?.PlusDays(awaited.DaysNeeded) > ended ? GapCause.OrderedTooLate : GapCause.TookLonger;
    }
}

/// <summary>What the records say of one day of a client's.</summary>
public enum DayOfHair
{
    /// <summary>Before their first bond, after they left, or while they have their hair at home.</summary>
    NotWatched,

    /// <summary>Something was on the head, or bondable in house.</summary>
    Covered,
    Without,
}

/// <summary>What a period says of one client.</summary>
/// <param name="DaysWatched">Days of the period on which they wore our hair or should have.</param>
/// <param name="HasLapsed">They wear nothing for so long that they are taken to have left.</param>
public sealed record ClientPastGaps(int DaysWatched, IReadOnlyList<RecordedGap> Gaps, bool HasLapsed);

/// <summary>Civil days in a row on which a client had no hair: neither on the head nor bondable in house.</summary>
/// <param name="From">The first such day of the period.</param>
/// <param name="Through">The last such day of the period, which it may outlast.</param>
public sealed record RecordedGap(LocalDate From, LocalDate Through, GapCause Cause)
{
    public int Days => Period.DaysBetween(From, Through) + 1;
}

/// <summary>Why somebody had no hair, as far as the records tell: the first that holds.</summary>
public enum GapCause
{
    /// <summary>The last unit in house was lost or damaged.</summary>
    LostOrDamaged,

    /// <summary>The next unit was promised for a day on which there was still hair, and came after it.</summary>
    CameAfterPromise,

    /// <summary>The next unit was ordered less than nine in ten lead times and the preparation before the hair ended.</summary>
    OrderedTooLate,

    /// <summary>Ordered in good time, with no promise broken: it took longer than nine in ten orders do.</summary>
    TookLonger,

    NothingOnOrder,
}

/// <summary>What was on one client's head and in house for them, day by day.</summary>
/// <param name="Bonds">From application to removal; null while it is on the head. Both days count as worn.</param>
/// <param name="LeftOn">The day they stopped being a client.</param>
public sealed record HairHistory(
    IReadOnlyList<(LocalDate AppliedOn, LocalDate? RemovedOn)> Bonds,
    IReadOnlyList<UnitAvailability> Units,
    LocalDate? LeftOn
);

/// <summary>Whether the next unit was there when the last one was worn out.</summary>
public static class OnTimeReplacementCounter
{
    /// <returns>
    /// Of the client's units that left service worn out in the period, how many there are, and for how many another, not worn
    /// out itself, was ready in house by that day. A client who had left by then needed none.
    /// </returns>
    public static (int InTime, int Units) Count(HairHistory client, LocalDate from, LocalDate through)
    {
        var worn = client
            .Units.Where(u => u.WornOutOn >= from && u.WornOutOn <= through && !(client.LeftOn <= u.WornOutOn))
            .OrderBy(u => u.WornOutOn)
            .ToList();
        return (worn.Count(unit => client.Units.Any(other => Follows(other, unit))), worn.Count);
    }

    private static bool Follows(UnitAvailability other, UnitAvailability unit) =>
        !ReferenceEquals(other, unit)
        && other.ReadyOn <= unit.WornOutOn
        && !(other.GoneOn <= unit.WornOutOn)
        && !(other.WornOutOn <= unit.WornOutOn);
}

/// <summary>When the share of clients who never went without hair may be shown: it means nothing when little of the year was observed.</summary>
public static class GapFreeRateRule
{
    public const int FewestClients = 30;

    /// <summary>On average, of the twelve that the rate is about.</summary>
    public const int FewestMonthsEach = 3;

    private const double DaysInMonth = 365.25 / 12;

    /// <param name="clients">Of whom something was seen.</param>
    /// <param name="daysWatched">Of all of them together.</param>
    public static bool IsMeaningful(int clients, int daysWatched) =>
        clients >= FewestClients && DaysToMonths(daysWatched) >= FewestMonthsEach * clients;

    public static double DaysToMonths(int daysWatched) => daysWatched / DaysInMonth;
}
