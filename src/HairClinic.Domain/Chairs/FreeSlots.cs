namespace HairClinic.Domain.Chairs;

/// <summary>Finds the best free slots for a visit.</summary>
/// <remarks>
/// Better is, in this order: nearer to the target (in steps of <see cref="SlotQuery.NearEnough"/>); with the preferred
/// person; fewer loose ends; nearer exactly; earlier; then the order in which people and chairs were given. Starts are
/// tried outwards from the target and the search stops once no later one can win, so its cost grows with starts ×
/// (chairs + people) at worst, never with chairs × people. What it returns is a proposal: the database decides on clashes.
/// </remarks>
public static class FreeSlots
{
    /// <exception cref="ArgumentException">The step is under a minute, or fewer than one slot is asked for.</exception>
    public static IReadOnlyList<Slot> Find(SlotQuery question)
    {
        if (question.Step < Duration.FromMinutes(1))
            throw new ArgumentException("Starts lie at least a minute apart.", nameof(question));
        if (question.Best < 1)
            throw new ArgumentException("Ask for at least one slot.", nameof(question));

        var open = Intervals.Merged(question.Open);
        var starts = Starts(question, open);
        var chairs = question.Chairs.Select(chair => (chair.ChairId, Free: FreeStartTimes.OfChair(question, chair, open))).ToArray();
        var people = question
            .People.Where(person => question.SkillsNeeded.All(person.Skills.Contains))
            .Select(person => (person.PersonId, Free: FreeStartTimes.OfPerson(question, person)))
            .ToArray();

        var client = FreeStartTimes.OfClient(question);
        var best = new List<Slot>(question.Best + 1);
        foreach (var start in Outwards(starts, question.Target))
        {
            var distance = Distance(start, question.Target);
            if (best.Count == question.Best && Bucket(question, distance) > Bucket(question, best[^1].FromTarget))
                break;
            if (client.CanStartAt(start) && BestAt(question, start, distance, chairs, people) is { } slot)
                AddIfBetter(question, best, slot);
        }

        return best;
    }

    private static List<Instant> Starts(SlotQuery question, List<Interval> open)
    {
        var starts = new List<Instant>();
        foreach (var stretch in open)
        {
            var start = stretch.Start;
            if (start < question.From)
            {
                // The first step at or after the window's beginning.
                var step = question.Step.ToInt64Nanoseconds();
                var behind = (question.From - start).ToInt64Nanoseconds();
                start += question.Step * ((behind + step - 1) / step);
            }

            var last = Instant.Min(stretch.End, question.To) - question.Service.Length;
            for (; start <= last; start += question.Step)
                starts.Add(start);
        }

        return starts;
    }

    private static IEnumerable<Instant> Outwards(List<Instant> starts, Instant target)
    {
        var later = starts.BinarySearch(target);
        if (later < 0)
            later = ~later;
        var earlier = later - 1;
        while (earlier >= 0 || later < starts.Count)
        {
            if (later == starts.Count || (earlier >= 0 && target - starts[earlier] <= starts[later] - target))
                yield return starts[earlier--];
            else
                yield return starts[later++];
        }
    }

    private static Slot? BestAt(
        SlotQuery question,
        Instant start,
        Duration distance,
        (Guid ChairId, FreeStartTimes Free)[] chairs,
        (Guid PersonId, FreeStartTimes Free)[] people
    )
    {
        (Guid Id, int LooseEnds)? chair = null;
        foreach (var (id, free) in chairs)
        {
            if (free.CanStartAt(start) && free.CountLooseEndsAt(start) is var loose && (chair is null || loose < chair.Value.LooseEnds))
                chair = (id, loose);
        }

        if (chair is null)
            return null;

        (Guid Id, bool Preferred, int LooseEnds)? person = null;
        foreach (var (id, free) in people)
        {
            if (!free.CanStartAt(start))
                continue;
            var (preferred, loose) = (id == question.PreferredPerson, free.CountLooseEndsAt(start));
            if (person is null || Beats((preferred, loose), (person.Value.Preferred, person.Value.LooseEnds)))
                person = (id, preferred, loose);
        }

        if (person is null)
            return null;
        return new(
            start,
            start + question.Service.Length,
            chair.Value.Id,
            person.Value.Id,
            distance,
            person.Value.Preferred,
            chair.Value.LooseEnds + person.Value.LooseEnds
        );
    }

    private static bool Beats((bool Preferred, int LooseEnds) one, (bool Preferred, int LooseEnds) other) =>
        one.Preferred != other.Preferred ? one.Preferred : one.LooseEnds < other.LooseEnds;

    private static void AddIfBetter(SlotQuery question, List<Slot> best, Slot slot)
    {
        var place = best.Count;
        while (place > 0 && Rank(question, slot).CompareTo(Rank(question, best[place - 1])) < 0)
            place--;
        best.Insert(place, slot);
        if (best.Count > question.Best)
            best.RemoveAt(best.Count - 1);
    }

    private static (long, bool, int, Duration, Instant) Rank(SlotQuery question, Slot slot) =>
        (Bucket(question, slot.FromTarget), !slot.WithPreferred, slot.LooseEnds, slot.FromTarget, slot.StartsAt);

    private static long Bucket(SlotQuery question, Duration distance) =>
        question.NearEnough > Duration.Zero ? (long)Math.Floor(distance / question.NearEnough) : distance.BclCompatibleTicks;

    private static Duration Distance(Instant start, Instant target) => start >= target ? start - target : target - start;
}

/// <summary>A place for a visit.</summary>
/// <param name="FromTarget">How far the start is from the one wished for, either way.</param>
/// <param name="WithPreferred">Whether the client's preferred person does it.</param>
/// <param name="LooseEnds">
/// How far the slot chops up the day, 0 to 4: sides of the chair's and of the person's time that border neither on another
/// booking nor on the start or end of the day.
/// </param>
public sealed record Slot(
    Instant StartsAt,
    Instant EndsAt,
    Guid ChairId,
    Guid PersonId,
    Duration FromTarget,
    bool WithPreferred,
    int LooseEnds
);
