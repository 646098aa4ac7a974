using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Domain.Tests.Wear.Watch;

public sealed class StreamWatchTests
{
    // By definition: the greatest sum from a unit to the last, over every unit it may begin with.
    [Fact]
    public void The_statistic_is_the_greatest_sum_to_the_end_and_the_cohort_begins_where_it_does()
    {
        var dice = new Random(5);
        for (var stream = 0; stream < 200; stream++)
        {
            var increments = Enumerable.Range(0, dice.Next(1, 40)).Select(_ => 2 * dice.NextDouble() - 1.1).ToArray();
            var sums = Enumerable.Range(0, increments.Length).Select(first => increments[first..].Sum()).ToList();

            var state = StreamWatch.Evaluate(increments);

            Assert.Equal(Math.Max(0, sums.Max()), state.Statistic, 1e-12);
            Assert.Equal(sums.Max() > 0 ? sums.IndexOf(sums.Max()) : null, state.FirstOfCohort);
            Assert.All(sums.Zip(state.Profile), pair => Assert.Equal(pair.First, pair.Second, 1e-12));
        }
    }

    [Fact]
    public void What_was_worse_once_and_is_well_again_names_nobody()
    {
        var state = StreamWatch.Evaluate([0.5, 2, 2, -1, -4]);

        Assert.Equal([-0.5, -1, -3, -5, -4], state.Profile);
        Assert.Null(state.FirstOfCohort);
        Assert.Equal(0, state.Statistic);
    }

    [Fact]
    public void A_stream_without_units_says_nothing()
    {
        var state = StreamWatch.Evaluate([]);

        Assert.Equal((0, null), (state.Statistic, state.FirstOfCohort));
    }

    // Simulated with the benchmark "watch"; no source outside it.
    [Theory]
    [InlineData(0, 4.9)]
    [InlineData(160, 4.9)]
    [InlineData(530, 6.09)]
    [InlineData(80_000, 11.11)]
    public void More_units_a_year_ask_for_more_evidence(double unitsPerYear, double limit)
    {
        Assert.Equal(limit, StreamWatch.LimitFor(unitsPerYear), 0.005);
    }

    [Fact]
    public void The_limit_itself_is_no_alarm()
    {
        Assert.False(StreamWatch.Evaluate([4.9]).IsAbove(4.9));
        Assert.True(StreamWatch.Evaluate([4.91]).IsAbove(4.9));
    }
}
