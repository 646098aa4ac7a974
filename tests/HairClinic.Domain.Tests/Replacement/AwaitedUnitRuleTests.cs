using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class AwaitedUnitRuleTests
{
    private static readonly LocalDate Came = new(2027, 3, 1);

    [Fact]
    public void A_first_unit_is_awaited() => Assert.True(AwaitedUnitRule.WasAwaited(Came, []));

    [Fact]
    public void Beside_hair_that_still_wears_a_unit_is_a_spare()
    {
        Assert.False(AwaitedUnitRule.WasAwaited(Came, [new(Came.PlusDays(-100), null, null)]));
        Assert.False(AwaitedUnitRule.WasAwaited(Came, [new(Came.PlusDays(-100), Came.PlusDays(1), Came.PlusDays(1))]));
        Assert.False(AwaitedUnitRule.WasAwaited(Came, [new(Came, null, null)]));
    }

    [Fact]
    public void Where_all_the_rest_was_worn_out_or_gone_or_not_here_yet_it_is_awaited() =>
        Assert.True(
            AwaitedUnitRule.WasAwaited(
                Came,
                [
                    new(Came.PlusDays(-200), null, Came),
                    new(Came.PlusDays(-300), Came.PlusDays(-20), null),
                    new(Came.PlusDays(30), null, null),
                    new(null, null, null),
                ]
            )
        );

    [Fact]
    public void Days_count_from_arrival_to_the_first_bond_and_of_one_that_waits_at_least_so_far()
    {
        var today = Came.PlusDays(60);

        Assert.Equal((17, true), AwaitedUnitRule.Observe(Came, Came.PlusDays(17), Came.PlusDays(40), [], today));
        Assert.Equal((60, false), AwaitedUnitRule.Observe(Came, null, null, [], today));
        Assert.Equal((9, false), AwaitedUnitRule.Observe(Came, null, Came.PlusDays(9), [], today));
        Assert.Null(AwaitedUnitRule.Observe(null, Came, null, [], today));
        Assert.Null(AwaitedUnitRule.Observe(Came, Came.PlusDays(-1), null, [], today));
        Assert.Null(AwaitedUnitRule.Observe(Came, Came, null, [], today));
    }

    [Fact]
    public void Once_another_unit_is_on_the_head_nobody_waits_any_more()
    {
        var today = Came.PlusDays(300);
        LocalDate[] others = [Came.PlusDays(-40), Came.PlusDays(12), Came.PlusDays(45)];

        Assert.Equal((12, false), AwaitedUnitRule.Observe(Came, Came.PlusDays(187), null, others, today));
        Assert.Equal((12, false), AwaitedUnitRule.Observe(Came, null, null, others, today));
        Assert.Equal((10, true), AwaitedUnitRule.Observe(Came, Came.PlusDays(10), null, others, today));
        Assert.Equal((12, true), AwaitedUnitRule.Observe(Came, Came.PlusDays(12), null, others, today));
    }

    // Truth: preparation takes 7 to 35 days, any alike. A unit that comes too early lies in the drawer until the old one is worn out.
    [Fact]
    public void Spares_in_a_drawer_do_not_make_preparation_look_longer()
    {
        var random = new Random(27);
        var (kept, all) = (new List<double>(), new List<double>());
        for (var i = 0; i < 4000; i++)
        {
            var (prepared, wornOut) = (7 + random.Next(29), Came.PlusDays(random.Next(-90, 91)));
            var bonded = LocalDate.Max(Came.PlusDays(prepared), wornOut);
            var days = (double)AwaitedUnitRule.Observe(Came, bonded, null, [], Came.PlusDays(200))!.Value.Days;
            all.Add(days);
            if (AwaitedUnitRule.WasAwaited(Came, [new(Came.PlusDays(-200), null, wornOut)]))
                kept.Add(days);
        }

        Assert.Equal(21, kept.Average(), 0.7);
        Assert.True(all.Average() > 30);
    }
}
