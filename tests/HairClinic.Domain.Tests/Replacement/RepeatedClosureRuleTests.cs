using HairClinic.Domain.Replacement;
using MathNet.Numerics.Distributions;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class RepeatedClosureRuleTests
{
    private static readonly LeadTimePrior Row = new(56, 77);
    private static readonly LocalDate First = new(2023, 5, 9);

    // The truth of a simulated workshop: nothing is worked from 20 December for eighteen days.
    [Fact]
    public void A_new_year_closure_nobody_entered_is_seen_after_two_years_and_not_before()
    {
        var orders = Draw(seed: 1, years: 3, aYear: 60, closedDays: 18);

        Assert.Null(Find(orders, First.PlusYears(2).PlusDays(-1)));
        var seen = Find(orders, First.PlusYears(3))!;

        // Between two arrivals nobody can tell when it began.
        Assert.InRange(Period.DaysBetween(new LocalDate(2025, 12, 20), seen.From), -7, 3);
        Assert.InRange(Period.DaysBetween(new LocalDate(2026, 1, 6), seen.To), -3, 7);
        Assert.Equal(3, seen.Years);
    }

    [Fact]
    public void It_is_seen_in_two_years_of_many_orders_and_among_kinds_that_take_different_times()
    {
        var seen = Find(Draw(seed: 2, years: 2, aYear: 150, closedDays: 18, kinds: 3), First.PlusYears(2).PlusDays(1))!;

        Assert.InRange(Period.DaysBetween(new LocalDate(2024, 12, 20), seen.From), -2, 3);
    }

    [Fact]
    public void What_is_entered_is_not_proposed_again()
    {
        var orders = Draw(seed: 1, years: 3, aYear: 60, closedDays: 18);
        DateInterval[] entered = [.. Enumerable.Range(2023, 3).Select(year => new DateInterval(new(year, 12, 20), new(year + 1, 1, 6)))];

        Assert.Null(RepeatedClosureRule.Find(orders, entered, First.PlusYears(3)));
    }

    [Fact]
    public void One_order_that_came_all_the_same_hides_nothing()
    {
        var orders = Draw(seed: 1, years: 3, aYear: 60, closedDays: 18);
        var one = new OrderSpan(new LocalDate(2024, 11, 1), new LocalDate(2024, 12, 27), 0, Row);

        Assert.NotNull(Find([.. orders, one], First.PlusYears(3)));
    }

    [Fact]
    public void A_slow_spell_of_one_winter_is_no_closure()
    {
        var orders = Draw(seed: 1, years: 3, aYear: 60, closedDays: 18, closedIn: 2024);

        Assert.Null(Find(orders, First.PlusYears(3)));
    }

    // Simulated workshops that never close, with few or many orders, alike or not, one in eight taking twice as long, looked at every half year.
    [Fact]
    public void Of_fifty_workshops_that_never_close_at_most_one_is_asked_about()
    {
        var asked = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var (few, wide, slow) = (seed % 2 == 0, seed % 3 == 0, seed % 5 == 0);
            var orders = Draw(100 + seed, 5, few ? 20 : 60, 0, wide ? 3 : 1, wide ? 0.35 : 0.2, slow ? 0.12 : 0);
            asked += Enumerable.Range(4, 7).Any(half => Find(orders, First.PlusMonths(6 * half).PlusDays(1)) is not null) ? 1 : 0;
        }

        Assert.InRange(asked, 0, 2);
    }

    private static RepeatedClosure? Find(IEnumerable<OrderSpan> orders, LocalDate through) =>
        RepeatedClosureRule.Find([.. orders.Where(o => o.ArrivedOn <= through)], [], through);

    private static List<OrderSpan> Draw(
        int seed,
        int years,
        int aYear,
        int closedDays,
        int kinds = 1,
        double spread = 0.2,
        double slow = 0,
        int? closedIn = null
    )
    {
        var random = new Random(seed);
        var orders = new List<OrderSpan>();
        for (var i = 0; i < years * aYear; i++)
        {
            var (on, kind) = (First.PlusDays(random.Next(years * 365)), random.Next(kinds));
            var days = Math.Exp(Row.Centre + 0.2 * kind + spread * Normal.Sample(random, 0, 1)) * (random.NextDouble() < slow ? 2 : 1);
            var came = on;
            for (var worked = 0; worked < Math.Max(1, Math.Round(days)); worked += IsClosed(came) ? 0 : 1)
                came = came.PlusDays(1);
            orders.Add(new OrderSpan(on, came, kind, Row));
        }
        return orders;

        bool IsClosed(LocalDate day)
        {
            var from = new LocalDate(day.Month >= 7 ? day.Year : day.Year - 1, 12, 20);
            return day >= from && day < from.PlusDays(closedDays) && (closedIn ?? from.Year) == from.Year;
        }
    }
}
