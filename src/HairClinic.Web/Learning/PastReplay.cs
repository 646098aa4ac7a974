using HairClinic.Domain.Replay;

namespace HairClinic.Web.Learning;

/// <summary>Asks of a practice's own past how well the program would have said it. Heavy: it learns anew up to <see cref="RefitSchedule.Most"/> times.</summary>
public static class PastReplay
{
    /// <exception cref="OperationCanceledException">It is not wanted any more.</exception>
    public static PastReplayResult Run(PastRecords records, CancellationToken cancellation)
    {
        var days = RefitSchedule.Days(records.FirstDay, records.Today);
        var result = new PastReplayResult(records.Today, records.FirstDay)
        {
            MonthsBetween = RefitSchedule.MonthsBetween(records.FirstDay, records.Today),
            OneIn = records.OneIn,
        };
        if (!IsEnough(records))
            return result;
        var before = Learn(records, days, cancellation);
        var bands = new PastBands(records, before);
        result = result with
        {
            Refits = days.Count,
            Bonds = BandShare.Estimate([.. bands.Bonds().Select(b => b.Outcome)]),
            Units = BandShare.Estimate([.. bands.Units().Select(u => u.Outcome)]),
        };
        return days.Count == 0 ? result : WithOrders(result, records, days[0].PlusDays(1), before, cancellation);
    }

    /// <summary>Learns on each of these days, and says what was known before a day.</summary>
    public static Func<LocalDate, PastKnowledge> Learn(PastRecords records, IReadOnlyList<LocalDate> days, CancellationToken cancellation)
    {
        var fits = new PastFits(records);
        var known = new List<PastKnowledge> { fits.Nothing };
        foreach (var day in days)
        {
            cancellation.ThrowIfCancellationRequested();
            known.Add(fits.Learn(day));
        }
        return day => known[RefitSchedule.Before(days, day) + 1];
    }

    private static PastReplayResult WithOrders(
        PastReplayResult result,
        PastRecords records,
        LocalDate from,
        Func<LocalDate, PastKnowledge> before,
        CancellationToken cancellation
    )
    {
        var pasts = new PastClients(records);
        result = result with { EndedUnits = pasts.EndedUnits };
        if (result.EndedUnits < BandShare.FewestToTell)
            return result;
        var facts = new Dictionary<LocalDate, ReorderFacts>();
        ReorderFacts FactsOf(PastKnowledge known) =>
            facts.TryGetValue(known.Day, out var made) ? made : facts[known.Day] = ReorderFacts.FromPast(records, known);
        var orders = new PastOrders(records, records.LookedAt, before, FactsOf);
        var chances = orders.Chances(cancellation);
        var (rule, gaps) = (new ReorderRule(LeadTimeForecasts.DaysInSight), new ReplayedGaps(0, 0));
        foreach (var client in records.LookedAt)
        {
            cancellation.ThrowIfCancellationRequested();
            if (pasts.Read(client, from) is not var (past, ordered))
                continue;
            gaps = gaps.Add(past.Days, ordered, OrderReplay.Run(past, pasts.Supply, standing => Advise(client, standing)));
        }
        return result with
        {
            Chances = ChanceBins.Group([.. chances.Select(c => (c.Said, c.Came))]),
            OrdersLeftOut = orders.LeftOut,
            ReplayedFrom = from,
            Gaps = gaps,
        };

        ReplayAdvice? Advise(ClientHairHistory client, ReplayStanding standing)
        {
            var day = standing.Day;
            var units = ClientUnits.AsOf(records.Lives.AsOf(day, client.Id), records.Kinds, client.Id, client.SalonId, day);
            if (FactsOf(before(day)).OutlookOf(rule, units, standing) is not { } outlook)
                return null;
            var late = outlook.OrderBy is null || outlook.SparesMissing > 0;
            var wait = late ? 0 : Period.DaysBetween(day, outlook.OrderBy!.Value);
            // Where a dozen would not do, one is ordered all the same.
            return new ReplayAdvice(wait, Math.Max(1, outlook.Quantity ?? 1), outlook.UnitKindId);
        }
    }

    // Of fewer ends nothing can be said, whatever is predicted.
    private static bool IsEnough(PastRecords records) =>
        records.Spells.Count(s => s.Spell.End != SpellEnd.After) >= BandShare.FewestToTell
        || records.LifeSpells.Count(s => s.Spell.End != SpellEnd.After) >= BandShare.FewestToTell;
}
