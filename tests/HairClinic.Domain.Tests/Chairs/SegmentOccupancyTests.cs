using CsCheck;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Tests.Visits;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

/// <summary>What is searched by (the timeline of a service) and what the database compares (the steps of a visit) are one.</summary>
public sealed class SegmentOccupancyTests
{
    private static readonly Gen<(SegmentKind, int)[]> Steps = Gen.Select(
        Gen.Enum<SegmentKind>(),
        Gen.Int[1, 12],
        (kind, fives) => (kind, 5 * fives)
    ).Array[1, 5];

    [Fact]
    public void A_visit_s_steps_take_chair_and_hands_exactly_when_the_service_s_timeline_does() =>
        Steps.Sample(steps =>
        {
            var timeline = new ServiceTimeline([.. steps.Select(s => new ServiceSegment(s.Item1, s.Item2))]);
            var visit = Booked.From(Booked.At(9), steps);

            for (var minute = 0; minute < timeline.Length.TotalMinutes; minute += 5)
            {
                var at = Booked.At(9) + Duration.FromMinutes(minute);
                var step = visit.Segments.Single(s => s.StartsAt <= at && at < s.EndsAt);
                Assert.Equal(timeline.Chair.Any(b => Within(b, minute)), step.HoldsChair);
                Assert.Equal(timeline.Hands.Any(b => Within(b, minute)), step.HoldsHands);
            }
        });

    [Fact]
    public void While_the_client_waits_elsewhere_the_chair_is_free_and_the_client_is_not()
    {
        var visit = Booked.From(Booked.At(9), (SegmentKind.HandsOn, 30), (SegmentKind.ChairFree, 60), (SegmentKind.HandsOn, 30));

        Assert.Equal([true, false, true], visit.Segments.Select(s => s.HoldsChair));
        Assert.True(visit.HoldsClient && visit.Overlaps(Booked.Hour(9, 45)));
    }

    private static bool Within(OffsetInterval block, int minute) =>
        block.From <= Duration.FromMinutes(minute) && Duration.FromMinutes(minute) < block.To;
}
