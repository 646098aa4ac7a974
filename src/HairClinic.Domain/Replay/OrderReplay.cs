namespace HairClinic.Domain.Replay;

/// <summary>Lives a client's past again, day by day, with the next units ordered on the days that were advised.</summary>
/// <remarks>
/// Days are counted as the records are (<see cref="Replacement.GapFinder"/>): a day is covered where something is on the head or bondable in
/// house at any time of it, the day a unit is used up among them. A unit is used up on days on which one was really worn, or would have
/// been had there been one; days off stay days off. The oldest unit in house is worn first.
/// </remarks>
public static class OrderReplay
{
    /// <summary>An order goes out at most once a week, and advice is asked again after four weeks at the latest, or when a unit comes or is used up.</summary>
    private const int Week = 7;

    private const int LongestWait = 4 * Week;

    /// <param name="advise">When to order; null where nothing is advised.</param>
    public static ReplayedOrders Run(ReplayedClient client, IReplayWorld world, Func<ReplayStanding, ReplayAdvice?> advise)
    {
        var (house, coming, lives) = (client.InHouse.ToList(), client.OnOrder.ToList(), new Queue<int>(client.NextLives));
        var (without, ordered, askOn, orderFrom) = (0, 0, client.From, client.From);
        for (var i = 0; i < client.Days.Count; i++)
        {
            var day = client.From.PlusDays(i);
            var came = coming.FindAll(o => o.ReadyOn <= day);
            house.AddRange(came.Select(o => o.Unit));
            coming.RemoveAll(o => o.ReadyOn <= day);
            // The day it comes off is covered still.
            var cameOff = house.RemoveAll(u => u.Worn >= u.Life) > 0;
            if (client.Days[i] == ReplayDay.NotWatched)
                continue;
            if (came.Count > 0 || cameOff || day >= askOn)
                Ask(day);
            var covered = cameOff || house.Count > 0 || client.Days[i] == ReplayDay.Lent || day >= client.EmergencySpareFrom;
            if (house.Count > 0 && client.Days[i] is ReplayDay.Worn or ReplayDay.Without)
                house[0] = house[0] with { Worn = house[0].Worn + 1 };
            without += covered ? 0 : 1;
        }
        return new ReplayedOrders(without, ordered);

        void Ask(LocalDate day)
        {
            askOn = day.PlusDays(Week);
            if (advise(new ReplayStanding(day, house, coming)) is not { } advice)
                return;
            if (advice.InDays > 0 || day < orderFrom)
            {
                askOn = LocalDate.Max(day.PlusDays(Math.Clamp(advice.InDays, 1, LongestWait)), orderFrom);
                return;
            }
            orderFrom = askOn;
            for (var n = 0; n < advice.Quantity; n++)
            {
                var life = lives.Count > 0 ? lives.Dequeue() : world.LifeOfAnother(advice.UnitKindId);
                coming.Add(new(new(advice.UnitKindId, 0, life), day, day.PlusDays(world.LeadDays(advice.UnitKindId, day))));
                ordered++;
            }
        }
    }
}

/// <param name="DaysWithout">Days without hair.</param>
/// <param name="Ordered">Units.</param>
public readonly record struct ReplayedOrders(int DaysWithout, int Ordered);

/// <summary>Days without hair of many clients, as they were and as they would have been.</summary>
/// <param name="Clients">Who was watched on at least one day.</param>
/// <param name="Days">On which they were watched, of all together.</param>
public sealed record ReplayedGaps(int Clients, int Days)
{
    public int PeopleWithout { get; init; }

    public int DaysWithout { get; init; }

    /// <summary>Units that were really ordered in that time.</summary>
    public int Ordered { get; init; }

    public int PeopleWithoutReplayed { get; init; }

    public int DaysWithoutReplayed { get; init; }

    public int OrderedReplayed { get; init; }

    /// <param name="ordered">Units that were really ordered.</param>
    public ReplayedGaps Add(IReadOnlyCollection<ReplayDay> days, int ordered, ReplayedOrders replayed)
    {
        var (watched, without) = (days.Count(d => d != ReplayDay.NotWatched), days.Count(d => d == ReplayDay.Without));
        return watched == 0
            ? this
            : new(Clients + 1, Days + watched)
            {
                PeopleWithout = PeopleWithout + (without > 0 ? 1 : 0),
                DaysWithout = DaysWithout + without,
                Ordered = Ordered + ordered,
                PeopleWithoutReplayed = PeopleWithoutReplayed + (replayed.DaysWithout > 0 ? 1 : 0),
                DaysWithoutReplayed = DaysWithoutReplayed + replayed.DaysWithout,
                OrderedReplayed = OrderedReplayed + replayed.Ordered,
            };
    }
}
