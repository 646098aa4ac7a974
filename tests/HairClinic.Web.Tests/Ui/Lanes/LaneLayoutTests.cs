using CsCheck;
using HairClinic.Web.Ui.Lanes;

namespace HairClinic.Web.Tests.Ui.Lanes;

public sealed class LaneLayoutTests
{
    private static readonly Guid Chair = Guid.Parse("00000000-0000-0000-0000-000000000001");

    [Fact]
    public void Free_time_between_two_visits_can_be_filled()
    {
        var lane = new LaneLayout(540, 720, [Visit(540, 600), Visit(660, 720)]).Lane(Chair);
        Assert.Equal(new LaneGap(Chair, 600, 660), Assert.Single(lane, cell => cell.Gap is not null).Gap);
    }

    [Fact]
    public void Time_that_is_past_cannot_be_filled()
    {
        var gaps = new LaneLayout(540, 720, [], now: 603).Lane(Chair).Where(cell => cell.Gap is not null);
        Assert.Equal(new LaneGap(Chair, 605, 720), Assert.Single(gaps).Gap);
    }

    [Fact]
    public void Time_outside_the_opening_hours_cannot_be_filled()
    {
        var layout = new LaneLayout(555, 705, [Visit(420, 450)]);
        Assert.Equal((420, 720), (layout.From, layout.Until));
        Assert.Equal(new LaneGap(Chair, 555, 705), Assert.Single(layout.Lane(Chair), cell => cell.Gap is not null).Gap);
    }

    [Fact]
    public void A_gap_shorter_than_the_shortest_visit_is_left_blank() =>
        Assert.DoesNotContain(new LaneLayout(540, 720, [Visit(540, 600), Visit(610, 720)]).Lane(Chair), cell => cell.Gap is not null);

    [Fact]
    public void Whatever_the_day_a_lanes_stretches_add_up_to_the_whole_of_it_and_no_visit_is_lost() =>
        Gen.Select(Gen.Int[0, 287], Gen.Int[1, 36])
            .Array[0, 20]
            .Sample(raw =>
            {
                var visits = NonOverlapping(raw);
                var layout = new LaneLayout(540, 1080, visits, now: 700);
                var lane = layout.Lane(Chair);
                return lane.Sum(cell => cell.Columns) == layout.Columns
                    && lane.All(cell => cell.Columns > 0)
                    && lane.Count(cell => cell.Block is not null) == visits.Count
                    && lane.All(cell => cell.Gap is null || cell.Gap.StartMinute >= 700);
            });

    private static List<LaneBlock> NonOverlapping((int Start, int Length)[] raw)
    {
        var visits = new List<LaneBlock>();
        var free = 0;
        foreach (var (start, length) in raw.OrderBy(spell => spell.Start))
        {
            var from = Math.Max(free, start * 5);
            var until = Math.Min(1440, from + length * 5);
            if (until <= from)
                continue;
            visits.Add(Visit(from, until));
            free = until;
        }
        return visits;
    }

    private static LaneBlock Visit(int start, int end) => new(Guid.NewGuid(), Chair, start, end, "A", null, "booked", "/visits/1");
}
