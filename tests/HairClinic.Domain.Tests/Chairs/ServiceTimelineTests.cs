using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

public sealed class ServiceTimelineTests
{
    private static OffsetInterval Block(int from, int to) => new(Duration.FromMinutes(from), Duration.FromMinutes(to));

    [Fact]
    public void A_coat_drying_keeps_the_chair_and_frees_the_hands()
    {
        var rebond = new ServiceTimeline([new(SegmentKind.HandsOn, 60), new(SegmentKind.Wait, 20), new(SegmentKind.HandsOn, 30)]);

        Assert.Equal([Block(0, 110)], rebond.Chair);
        Assert.Equal([Block(0, 60), Block(80, 110)], rebond.Hands);
        Assert.Equal(Duration.FromMinutes(110), rebond.Length);
    }

    [Fact]
    public void A_wait_too_short_to_start_on_someone_else_keeps_the_hands_too()
    {
        var segments = new ServiceSegment[] { new(SegmentKind.HandsOn, 60), new(SegmentKind.Wait, 9), new(SegmentKind.HandsOn, 30) };

        Assert.Equal([Block(0, 99)], new ServiceTimeline(segments).Hands);
        Assert.Equal([Block(0, 60), Block(69, 99)], new ServiceTimeline(segments, Duration.FromMinutes(5)).Hands);
    }

    [Fact]
    public void A_client_who_waits_elsewhere_frees_chair_and_hands()
    {
        var colour = new ServiceTimeline([new(SegmentKind.HandsOn, 20), new(SegmentKind.ChairFree, 40), new(SegmentKind.HandsOn, 30)]);

        Assert.Equal([Block(0, 20), Block(60, 90)], colour.Chair);
        Assert.Equal(colour.Chair, colour.Hands);
    }

    [Fact]
    public void A_service_has_segments_and_each_has_minutes()
    {
        Assert.Throws<ArgumentException>(() => new ServiceTimeline([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ServiceSegment(SegmentKind.Wait, 0));
    }
}
