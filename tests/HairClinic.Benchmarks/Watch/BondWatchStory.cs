using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Benchmarks.Watch;

/// <summary>The bonds of one practice over two years, its adhesives and their lots watched once a week.</summary>
internal sealed class BondWatchStory
{
    private readonly BondPractice _practice;

    public BondWatchStory(WatchWorld world, int seed)
    {
        _practice = new BondPractice(world.Clients, seed, world.DeclineFrom);
        // The bad lot and its adhesive are both right.
        Track = new WatchTrack(StreamWatch.LimitFor, IsTrue);
        for (var day = -34; day < WatchWorld.Days; day++)
        {
            _practice.Live(day);
            if (day >= 0 && day % 7 == 6)
                Look(day);
        }

        bool IsTrue(int stream, int day) =>
            world.DeclineFrom is { } from
            && day >= from
            && stream is 0 or >= 1000 and < 2000
            && _practice.Bonds.Exists(b => b.IsOfDecline && (stream == 0 || BondPractice.LotOf(b) == stream));
    }

    public WatchTrack Track { get; }

    public double BondsPerYear => _practice.Bonds.Count(b => b.DeliveredOn >= 0) / 2.0;

    private void Look(int day)
    {
        var book = new StoryBook(_practice.Bonds, day);
        if (book.Fit.Missing is not null)
            return;
        var fit = WatchedFit.From(book.Fit);
        var year = _practice.Bonds.Count(b => b.DeliveredOn > day - StreamWatch.WatchedDays);
        foreach (var stream in _practice.Bonds.GroupBy(b => b.Client.Workshop).Concat(_practice.Bonds.GroupBy(BondPractice.LotOf)))
        {
            StoryUnit[] own = [.. stream];
            // Each bond is in two streams.
            if (own[^1].DeliveredOn > day - StreamWatch.WatchedDays && Track.From(own, stream.Key, day) is { } from)
                Track.Look(own, stream.Key, day, ShiftScan.Increments(fit, book.Rows(own), own.Length, from), 2 * year);
        }
    }
}
