using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Replacement;

/// <summary>Finds the days on which a client had no hair.</summary>
/// <remarks>
/// A day is covered when a unit was on the head, or bondable in house, at any time of it: a day off with a unit resting in
/// house is the client's own choice. Clients are watched from their first bond until they leave. Whoever takes the last unit
/// home, sound, stops being watched until the next one: they went, and did not go without. Whoever wears nothing for longer
/// than the practice waits, and has not come back, is taken to have left when the cover ended.
/// </remarks>
public static class GapFinder
{
    /// <param name="through">The last day of the period: today.</param>
    public static ClientGaps Of(HairHistory client, LocalDate from, LocalDate through)
    {
        if (client.Bonds.Count == 0)
            return new ClientGaps(0, [], HasLapsed: false);
        var first = CivilDay.Number(client.Bonds.Min(b => b.AppliedOn));
        var (begin, end) = (CivilDay.Number(from), CivilDay.Number(through));
        if (client.LeftOn is { } left)
            end = Math.Min(end, CivilDay.Number(left) - 1);
        var covers = Covers(client, first, end);
        var lastCovered = covers.Count == 0 ? first - 1 : covers.Max(c => c.To);
        var lapsed = HairLapse.HasLapsed(CivilDay.Date(lastCovered), CivilDay.Date(end));
        if (lapsed)
            end = lastCovered;
        var (gaps, away) = (new List<Gap>(), 0);
        var next = first;
        foreach (var (since, until) in covers)
        {
            Note(next, since - 1);
            next = Math.Max(next, until + 1);
        }
        Note(next, end);
        return new ClientGaps(Math.Max(0, end - Math.Max(begin, first) + 1 - away), gaps, lapsed);

        void Note(int bare, int last)
        {
            var (since, ended) = (Math.Max(bare, begin), CivilDay.Date(bare).PlusDays(-1));
            if (last < since)
                return;
            if (client.Units.Any(u => u.IsAtHome && u.GoneOn == ended))
                away += last - since + 1;
            else
                gaps.Add(new(CivilDay.Date(since), CivilDay.Date(last), CauseOf(client, ended)));
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
                    (From: Math.Max(first, CivilDay.Number(c.From)), To: Math.Min(end, c.To is { } to ? CivilDay.Number(to) : end))
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
