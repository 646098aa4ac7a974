using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using static HairClinic.Domain.Tests.Visits.Booked;

namespace HairClinic.Domain.Tests.Visits;

public sealed class ClientOccupancyRuleTests
{
    [Fact]
    public void A_visit_takes_its_client_until_it_is_done()
    {
        var visit = Hour(9);
        Assert.True(visit.HoldsClient);
        visit.Arrive(Day);
        visit.Begin(Day);
        Assert.True(visit.HoldsClient);

        visit.Finish(Day);

        Assert.False(visit.HoldsClient);
    }

    [Fact]
    public void Called_off_or_not_kept_it_gives_the_client_back_and_takes_them_again_when_they_come_after_all()
    {
        var (off, missed) = (Hour(9), Hour(9));
        off.Cancel();
        missed.MarkDidNotCome(At(9, 30));
        Assert.False(off.HoldsClient || missed.HoldsClient);

        off.UndoStateChange();
        missed.UndoStateChange();

        Assert.True(off.HoldsClient && missed.HoldsClient);
    }

    [Fact]
    public void Of_an_old_book_only_what_is_still_to_come_takes_the_client()
    {
        var (past, ahead, over) = (Hour(9), Hour(9), Hour(9));

        past.ImportState(VisitState.Booked, "a", Day.PlusDays(1));
        ahead.ImportState(VisitState.Booked, "b", Day);
        over.ImportState(VisitState.Done, "c", Day);

        Assert.Equal((false, true, false), (past.HoldsClient, ahead.HoldsClient, over.HoldsClient));
    }

    [Theory]
    [InlineData(10, 0, false)]
    [InlineData(9, 59, true)]
    [InlineData(8, 1, true)]
    [InlineData(8, 0, false)]
    public void Visits_meet_when_they_share_a_moment_and_not_when_they_touch(int hour, int minute, bool meet)
    {
        Assert.Equal(meet, Hour(9).Overlaps(Hour(hour, minute)));
        Assert.Equal(meet, Hour(hour, minute).Overlaps(Hour(9)));
    }

    [Fact]
    public void Of_visits_that_a_merge_brings_together_those_that_came_stand_aside_and_none_is_lost()
    {
        var (own, called) = (Hour(9), Hour(14));
        called.Cancel();
        var (clash, free, instead) = (Hour(9, 30), Hour(11), Hour(14));

        var aside = ClientOccupancyRule.ReleaseOverlapping([own, called], [free, instead, clash]);

        Assert.Equal([(own, clash)], aside);
        Assert.Equal((true, false, true, true), (own.HoldsClient, clash.HoldsClient, free.HoldsClient, instead.HoldsClient));
        Assert.Equal(VisitState.Booked, clash.State);
    }

    [Fact]
    public void Who_stands_aside_goes_on_so_until_it_is_moved()
    {
        var (own, aside) = (Hour(9), Hour(9));
        ClientOccupancyRule.ReleaseOverlapping([own], [aside]);

        aside.Arrive(Day);
        aside.UndoStateChange();
        aside.ImportState(VisitState.Booked, "a", Day);
        Assert.False(aside.HoldsClient);

        Place(aside, At(12), (SegmentKind.HandsOn, 60));
        Assert.True(aside.HoldsClient);
    }

    [Fact]
    public void A_moved_visit_has_the_steps_of_its_new_time_alone()
    {
        var visit = Hour(9);

        Place(visit, At(12), (SegmentKind.HandsOn, 30), (SegmentKind.ChairFree, 15));

        Assert.Equal([At(12), At(12, 30)], visit.Segments.Select(s => s.StartsAt));
        Assert.Equal((At(12), At(12, 45)), (visit.StartsAt, visit.EndsAt));
    }

    [Fact]
    public void Nobody_arrives_sits_down_or_is_done_on_a_day_before_the_visit_s()
    {
        var visit = Hour(9);

        foreach (
            var step in new Action[]
            {
                () => visit.Arrive(Day.PlusDays(-1)),
                () => visit.Begin(Day.PlusDays(-1)),
                () => visit.Finish(Day.PlusDays(-1)),
            }
        )
            Assert.Equal([Day], Assert.Throws<Refusal>(step).Arguments);

        Assert.Equal(VisitState.Booked, visit.State);
        visit.Arrive(Day);
        Assert.Equal(VisitState.Arrived, visit.State);
    }

    [Fact]
    public void Nobody_stayed_away_before_the_visit_begins()
    {
        var visit = Hour(9);

        Refused.Saying("This visit’s time has not come yet. If they will not come, call it off.", () => visit.MarkDidNotCome(At(8, 59)));
        Assert.Equal(VisitState.Booked, visit.State);

        visit.MarkDidNotCome(At(9));
        Assert.Equal(VisitState.DidNotCome, visit.State);
    }
}
