using HairClinic.Domain.Wear.Watch;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Watch;

public sealed class WatchSampleTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(4000, 1)]
    [InlineData(4001, 2)]
    [InlineData(360_000, 90)]
    public void Up_to_four_thousand_units_a_year_all_are_watched(int units, int oneIn)
    {
        Assert.Equal(oneIn, WatchSample.OneIn(units));
    }

    [Fact]
    public void Of_more_an_even_share_of_clients_is_and_always_the_same()
    {
        var dice = new Random(1);
        var clients = Enumerable
            .Range(0, 20_000)
            .Select(_ =>
            {
                var bytes = new byte[16];
                dice.NextBytes(bytes);
                return new Guid(bytes);
            })
            .ToList();

        Assert.All(clients, client => Assert.True(WatchSample.Keeps(client, 1)));
        Assert.InRange(clients.Count(client => WatchSample.Keeps(client, 10)), 1850, 2150);
        Assert.Equal(clients.Where(c => WatchSample.Keeps(c, 10)), clients.Where(c => WatchSample.Keeps(c, 10)));
    }

    [Fact]
    public void What_is_kept_of_a_watch_is_its_last_point()
    {
        var watch = new StoredWatch(Guid.Empty, new WatchedStream(WatchedStreamKind.Lot, Guid.Empty));
        Assert.Equal(0, watch.Statistic);

        watch.Record(
            new LocalDate(2027, 9, 1),
            [new LocalDate(2027, 3, 1), new LocalDate(2027, 4, 1)],
            StreamWatch.Evaluate([0.5, 1.5]),
            4.9
        );

        Assert.Equal(2, watch.Statistic);
        Assert.Throws<ArgumentException>(() => watch.Record(watch.DataCut, [], StreamWatch.Evaluate([1]), 4.9));
    }
}
