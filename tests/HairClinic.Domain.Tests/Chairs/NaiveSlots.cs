using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

/// <summary>The free-slot search said a second time, slowly: every start, chair and person, five minutes at a time.</summary>
internal static class NaiveSlots
{
    private static readonly Duration Tick = Duration.FromMinutes(5);

    public static List<Slot> Find(SlotQuery question)
    {
        var all =
            from start in Starts(question)
            where Ticks(new(Duration.Zero, question.Service.Length), start).All(at => !In(question.ClientBusy, at))
            from chair in question.Chairs
            from person in question.People
            where question.SkillsNeeded.All(person.Skills.Contains)
            where question.Service.Chair.All(block => Ticks(block, start).All(at => !In(chair.Busy, at)))
            where question.Service.Hands.All(block => Ticks(block, start).All(at => IsIdle(person, at)))
            select new Slot(
                start,
                start + question.Service.Length,
                chair.ChairId,
                person.PersonId,
                Duration.Max(start - question.Target, question.Target - start),
                person.PersonId == question.PreferredPerson,
                Loose(question.Service.Chair, start, at => In(question.Open, at) && !In(chair.Busy, at))
                    + Loose(question.Service.Hands, start, at => IsIdle(person, at))
            );
        return
        [
            .. all.GroupBy(slot => slot.StartsAt)
                .Select(sameStart => sameStart.OrderBy(slot => !slot.WithPreferred).ThenBy(slot => slot.LooseEnds).First())
                .OrderBy(slot => Band(question, slot.FromTarget))
                .ThenBy(slot => !slot.WithPreferred)
                .ThenBy(slot => slot.LooseEnds)
                .ThenBy(slot => slot.FromTarget)
                .ThenBy(slot => slot.StartsAt)
                .Take(question.Best),
        ];
    }

    public static bool In(IEnumerable<Interval> intervals, Instant at) => intervals.Any(interval => interval.Contains(at));

    public static IEnumerable<Instant> Ticks(OffsetInterval block, Instant start)
    {
        for (var at = start + block.From; at < start + block.To; at += Tick)
            yield return at;
    }

    private static bool IsIdle(PersonSchedule person, Instant at) => In(person.Working, at) && !In(person.Busy, at);

    private static int Loose(IReadOnlyList<OffsetInterval> blocks, Instant start, Func<Instant, bool> isIdle) =>
        blocks.Count == 0 ? 0 : (isIdle(start + blocks[0].From - Tick) ? 1 : 0) + (isIdle(start + blocks[^1].To) ? 1 : 0);

    private static long Band(SlotQuery question, Duration distance) =>
        (long)distance.TotalMinutes / Math.Max(1, (long)question.NearEnough.TotalMinutes);

    private static IEnumerable<Instant> Starts(SlotQuery question)
    {
        var open = question.Open.OrderBy(stretch => stretch.Start).ToList();
        foreach (var stretch in open)
        {
            // Lunch may have no length: then the two halves of the day are one stretch with one grid.
            if (open.Any(before => before.End == stretch.Start))
                continue;
            var end = open.FirstOrDefault(after => after.Start == stretch.End, stretch).End;
            for (var start = stretch.Start; start + question.Service.Length <= end; start += question.Step)
            {
                if (start >= question.From && start + question.Service.Length <= question.To)
                    yield return start;
            }
        }
    }
}
