using HairClinic.Domain.Replay;
using NodaTime;

namespace HairClinic.Domain.Tests.Replay;

/// <summary>Common practice, no source: two clients' pasts, worked by hand.</summary>
public sealed class OrderReplayTests
{
    private static readonly LocalDate Start = new(2026, 1, 1);
    private static readonly Guid Kind = Guid.NewGuid();

    // Every order takes 60 days; a unit that no real one stands for lasts 100.
    private sealed class World : IReplayWorld
    {
        public int LeadDays(Guid unitKindId, LocalDate orderedOn) => 60;

        public int LifeOfAnother(Guid unitKindId) => 100;
    }

    // One unit at a time, ordered when the one worn is 30 days old.
    private static ReplayAdvice? AtThirtyDays(ReplayStanding standing) =>
        standing.InHouse.Count + standing.OnOrder.Count > 1
            ? new ReplayAdvice(1000, 1, Kind)
            : new ReplayAdvice(Math.Max(0, 30 - standing.InHouse.Sum(u => u.Worn)), 1, Kind);

    [Fact]
    public void Two_clients_gaps_are_counted_day_by_day()
    {
        // The first unit lasts 100 days and comes off on day 100; the next was ordered so late that it was on the head on day 140 only.
        // Ordered on day 30 it is there on day 90, and nothing is missed.
        var first = Past(Worn(100), Days(ReplayDay.Off, 1), Days(ReplayDay.Without, 39), Worn(60)) with
        {
            InHouse = [new(Kind, 0, 100)],
            NextLives = [100],
        };
        // The first unit lasts 50 days. Ordered on day 30 the next is there on day 90: days 51 to 89 are without, 39 of them, and really were 49.
        var second = Past(Worn(50), Days(ReplayDay.Off, 1), Days(ReplayDay.Without, 49), Worn(100)) with
        {
            InHouse = [new(Kind, 0, 50)],
            NextLives = [200],
        };

        var (one, two) = (OrderReplay.Run(first, new World(), AtThirtyDays), OrderReplay.Run(second, new World(), AtThirtyDays));
        var both = new ReplayedGaps(0, 0).Add(first.Days, 1, one).Add(second.Days, 1, two);

        Assert.Equal((0, 39), (one.DaysWithout, two.DaysWithout));
        Assert.Equal((2, 400), (both.Clients, both.Days));
        Assert.Equal((2, 39 + 49), (both.PeopleWithout, both.DaysWithout));
        Assert.Equal((1, 39), (both.PeopleWithoutReplayed, both.DaysWithoutReplayed));
        Assert.Equal((2, one.Ordered + two.Ordered), (both.Ordered, both.OrderedReplayed));
    }

    // What really happened, ordered on the day it really was, gives the days that really were.
    [Fact]
    public void Ordered_on_the_real_days_the_past_comes_out_as_it_was()
    {
        var past = Past(Worn(100), Days(ReplayDay.Off, 1), Days(ReplayDay.Without, 39), Worn(60)) with
        {
            InHouse = [new(Kind, 0, 100)],
            NextLives = [100],
        };

        var replayed = OrderReplay.Run(
            past,
            new World(),
            standing => new ReplayAdvice(
                Math.Max(0, Period.DaysBetween(standing.Day, Start.PlusDays(80))),
                standing.OnOrder.Count == 0 ? 1 : 0,
                Kind
            )
        );

        Assert.Equal(39, replayed.DaysWithout);
    }

    [Fact]
    public void Days_off_use_up_no_unit_and_a_loan_covers_a_day()
    {
        var off = Past(Worn(10), Days(ReplayDay.Off, 20), Worn(11)) with { InHouse = [new(Kind, 0, 20)] };
        var lent = Past(Worn(10), Days(ReplayDay.Off, 1), Days(ReplayDay.Lent, 5), Days(ReplayDay.Without, 4)) with
        {
            InHouse = [new(Kind, 0, 10)],
        };

        Assert.Equal(0, OrderReplay.Run(off, new World(), _ => null).DaysWithout);
        Assert.Equal(4, OrderReplay.Run(lent, new World(), _ => null).DaysWithout);
        Assert.Equal(0, OrderReplay.Run(lent with { EmergencySpareFrom = Start.PlusDays(12) }, new World(), _ => null).DaysWithout);
    }

    [Fact]
    public void Nothing_is_counted_while_nobody_watches()
    {
        var past = Past(Worn(10), Days(ReplayDay.Off, 1), Days(ReplayDay.NotWatched, 30)) with { InHouse = [new(Kind, 0, 10)] };

        Assert.Equal(0, OrderReplay.Run(past, new World(), _ => null).DaysWithout);
        Assert.Equal((1, 11), Counted(past));
    }

    // Whoever advises is never shown what nobody can know yet, but for the days it is asked on; it is asked when a unit comes or is used up.
    [Fact]
    public void Advice_is_asked_when_a_unit_comes_or_is_used_up()
    {
        var asked = new List<int>();
        var past = Past(Worn(10), Days(ReplayDay.Off, 1), Worn(30)) with
        {
            InHouse = [new(Kind, 0, 10)],
            OnOrder = [new(new(Kind, 0, 100), Start.PlusDays(-20), Start.PlusDays(5))],
        };

        OrderReplay.Run(
            past,
            new World(),
            standing =>
            {
                asked.Add(Period.DaysBetween(Start, standing.Day));
                return new ReplayAdvice(1000, 1, Kind);
            }
        );

        Assert.Equal([0, 5, 10, 38], asked);
    }

    private static (int, int) Counted(ReplayedClient past)
    {
        var counted = new ReplayedGaps(0, 0).Add(past.Days, 0, default);
        return (counted.Clients, counted.Days);
    }

    private static ReplayedClient Past(params ReadOnlySpan<IEnumerable<ReplayDay>> days) =>
        new(Start, [.. days.ToArray().SelectMany(d => d)], [], [], []);

    private static IEnumerable<ReplayDay> Worn(int days) => Days(ReplayDay.Worn, days);

    private static IEnumerable<ReplayDay> Days(ReplayDay kind, int days) => Enumerable.Repeat(kind, days);
}
