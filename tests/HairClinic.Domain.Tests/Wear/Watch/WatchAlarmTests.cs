using HairClinic.Domain.Wear.Watch;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Watch;

public sealed class WatchAlarmTests
{
    private static readonly LocalDate Today = new(2027, 9, 1);
    private static readonly LocalDate Spring = new(2027, 4, 10);
    private static readonly WatchedStream Workshop = new(WatchedStreamKind.Workshop, new Guid(7, 0, 0, new byte[8]));
    private static readonly Guid Owner = new(1, 0, 0, new byte[8]);

    // A unit a week; the last ten speak for a decline.
    private static readonly LocalDate[] Deliveries = [.. Enumerable.Range(0, 30).Select(week => Today.PlusDays(-7 * (30 - week)))];
    private static readonly double[] Increments = [.. Enumerable.Range(0, 30).Select(week => week < 20 ? -0.3 : 0.8)];

    [Fact]
    public void Above_the_limit_the_units_from_the_likeliest_place_on_are_named()
    {
        var alarm = Raise(Today.PlusDays(-365), 4.9)!;

        Assert.Equal((Deliveries[20], 10, Today), (alarm.CohortFrom, alarm.Units, alarm.RaisedOn));
        Assert.Equal(8, alarm.Statistic, 1e-9);
        Assert.True(alarm.IsOpen);
        Assert.Null(Raise(Today.PlusDays(-365), 8.01));
    }

    [Fact]
    public void What_was_delivered_before_it_may_begin_is_not_named()
    {
        var alarm = Raise(Deliveries[22], 4.9)!;

        Assert.Equal((Deliveries[22], 8), (alarm.CohortFrom, alarm.Units));
        Assert.Null(Raise(Deliveries[25], 4.9));
        Assert.Null(Raise(Today, 4.9));
    }

    [Fact]
    public void A_year_back_at_most_is_looked()
    {
        Assert.Equal(Today.PlusDays(-365), WatchAlarmRule.MayBeginFrom([], Today));
    }

    [Fact]
    public void While_one_is_open_no_other_is_raised()
    {
        Assert.Null(WatchAlarmRule.MayBeginFrom([Alarm()], Today));
    }

    [Fact]
    public void After_a_false_one_only_what_came_later_counts()
    {
        var alarm = Alarm();
        alarm.Dismiss(Owner, Today);

        Assert.Equal(Today.PlusDays(1), WatchAlarmRule.MayBeginFrom([alarm], Today.PlusDays(30)));
        Assert.False(alarm.Names(Spring));
        Assert.Equal((Today, Owner, WatchAlarmEnd.FalseAlarm), (alarm.ClosedOn, alarm.ClosedBy, alarm.End));
    }

    [Fact]
    public void After_one_that_is_over_what_came_after_its_last_unit_counts_and_its_units_stay_named()
    {
        var alarm = Alarm();
        Assert.True(alarm.Names(Today.PlusDays(40)));
        alarm.EndCohort(Spring.PlusDays(50), Owner, Today);

        Assert.Equal(Spring.PlusDays(51), WatchAlarmRule.MayBeginFrom([alarm], Today));
        Assert.True(alarm.Names(Spring));
        Assert.True(alarm.Names(Spring.PlusDays(50)));
        Assert.False(alarm.Names(Spring.PlusDays(51)));
        Assert.False(alarm.Names(Spring.PlusDays(-1)));
    }

    [Fact]
    public void Once_nothing_of_it_is_left_it_closes_by_itself()
    {
        var alarm = Alarm();

        Assert.False(alarm.CloseIfUsedUp(left: 1, Today));
        Assert.True(alarm.IsOpen);
        Assert.True(alarm.CloseIfUsedUp(left: 0, Today));
        Assert.Equal((WatchAlarmEnd.UsedUp, null), (alarm.End, alarm.ClosedBy));
        Assert.Equal(Today.PlusDays(1), WatchAlarmRule.MayBeginFrom([alarm], Today));
    }

    [Fact]
    public void It_is_closed_once()
    {
        var alarm = Alarm();
        alarm.Dismiss(Owner, Today);

        Refused.Saying("This alarm is closed already.", () => alarm.Dismiss(Owner, Today));
        Refused.Saying("This alarm is closed already.", () => alarm.EndCohort(Spring, Owner, Today));
        Assert.False(alarm.CloseIfUsedUp(0, Today));
    }

    [Fact]
    public void The_last_worse_delivery_lies_between_the_first_and_today()
    {
        Refused.Saying(
            "The last delivery that is worse cannot lie before the first.",
            () => Alarm().EndCohort(Spring.PlusDays(-1), Owner, Today)
        );
        Refused.Saying("That day is still to come.", () => Alarm().EndCohort(Today.PlusDays(1), Owner, Today));
    }

    private static WatchAlarm Alarm() => new(Guid.Empty, Workshop, Spring, 12, Today.PlusDays(-20), 5.3, 4.9);

    private static WatchAlarm? Raise(LocalDate from, double limit) =>
        WatchAlarmRule.Raise(Guid.Empty, Workshop, Deliveries, Increments, from, limit, Today);
}
