using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Benchmarks.Watch;

/// <summary>One practice over two years, watched in three ways at once, once a week.</summary>
internal sealed class WatchStory
{
    private const int Week = 7;
    private readonly StoryPractice _practice;
    private readonly bool _alsoBare;

    public WatchStory(WatchWorld world, int seed, bool alsoBare)
    {
        (_practice, _alsoBare) = (new StoryPractice(world, seed), alsoBare);
        AsBuilt = new WatchTrack(StreamWatch.LimitFor, IsTrue);
        OneLimit = new WatchTrack(_ => StreamWatch.Limit, IsTrue);
        Bare = new WatchTrack(_ => StreamWatch.Limit, IsTrue);
        Play();

        bool IsTrue(int workshop, int day) => workshop == world.Declines && day >= world.DeclineFrom;
    }

    /// <summary>The limit goes by the number of units.</summary>
    public WatchTrack AsBuilt { get; }

    /// <summary>The same evidence, with 4.9 for every practice.</summary>
    public WatchTrack OneLimit { get; }

    /// <summary>4.9, and each unit weighed by itself under the fit without those that are watched.</summary>
    public WatchTrack Bare { get; }

    public int Unsettled { get; private set; }

    public IReadOnlyList<StoryUnit> Units => _practice.Units;

    private void Play()
    {
        var outlook = StoryBook.Outlook(null);
        for (var day = 0; day < WatchWorld.Days; day++)
        {
            _practice.Live(day, outlook);
            if (day % Week != Week - 1)
                continue;
            var book = new StoryBook(_practice.Units, day);
            if (book.Fit.Missing is not null)
            {
                Unsettled++;
                continue;
            }
            if (day % (4 * Week) == Week - 1)
                outlook = StoryBook.Outlook(book.Fit);
            Look(book, day);
        }
    }

    private void Look(StoryBook book, int day)
    {
        // Of a year; in its first by what there was so far.
        var delivered = _practice.Units.Count(u => u.DeliveredOn <= day && u.DeliveredOn > day - 365);
        var bare = _alsoBare ? new BareWatch(_practice.Units, day) : null;
        for (var workshop = 0; workshop < 2; workshop++)
        {
            var stream = book.Stream(workshop);
            var from = new[] { AsBuilt, OneLimit }.Min(track => track.From(stream, workshop, day) ?? int.MaxValue);
            if (from < int.MaxValue)
            {
                var increments = ShiftScan.Increments(WatchedFit.From(book.Fit), book.Rows(stream), stream.Length, from);
                AsBuilt.Look(stream, workshop, day, increments, delivered);
                OneLimit.Look(stream, workshop, day, increments, delivered);
            }
            if (bare is not null && Bare.From(stream, workshop, day) is not null)
                Bare.Look(stream, workshop, day, bare.Increments(stream), delivered);
        }
    }
}
