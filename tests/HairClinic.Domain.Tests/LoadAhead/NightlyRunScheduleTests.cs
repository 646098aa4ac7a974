using HairClinic.Domain.LoadAhead;
using NodaTime;

namespace HairClinic.Domain.Tests.LoadAhead;

public sealed class NightlyRunScheduleTests
{
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];
    private static readonly Instant Two = Instant.FromUtc(2027, 2, 3, 2, 0);

    [Fact]
    public void A_night_begins_at_two_and_by_day_the_last_one_counts()
    {
        Assert.Equal(Two, NightlyRunSchedule.StartOfNight(Two, London));
        Assert.Equal(Two, NightlyRunSchedule.StartOfNight(Instant.FromUtc(2027, 2, 4, 1, 59), London));
        // In summer two o'clock in London is one o'clock in Greenwich.
        Assert.Equal(Instant.FromUtc(2027, 7, 1, 1, 0), NightlyRunSchedule.StartOfNight(Instant.FromUtc(2027, 7, 1, 12, 0), London));
    }

    [Fact]
    public void A_night_without_a_run_asks_for_one_and_a_run_that_is_done_stopped_or_under_way_is_enough()
    {
        Assert.True(NightlyRunSchedule.IsDue([], Two));
        Assert.False(NightlyRunSchedule.IsDue([Run(Two, RecalculationState.Done)], Two + Duration.FromHours(20)));
        Assert.False(NightlyRunSchedule.IsDue([Run(Two, RecalculationState.Stopped)], Two + Duration.FromHours(20)));
        Assert.False(NightlyRunSchedule.IsDue([new Recalculation(Guid.NewGuid(), null, Two)], Two + Duration.FromHours(20)));
        Assert.False(
            NightlyRunSchedule.IsDue(
                [Run(Two, RecalculationState.Failed), new Recalculation(Guid.NewGuid(), null, Two)],
                Two + Duration.FromHours(20)
            )
        );
    }

    [Fact]
    public void One_that_failed_is_tried_again_the_same_night_three_times_with_growing_pauses_and_then_no_more()
    {
        List<Recalculation> runs = [];
        List<double> pauses = [];
        var last = Two;
        for (var minute = 0; minute < 23 * 60; minute++)
        {
            var now = Two + Duration.FromMinutes(minute);
            if (!NightlyRunSchedule.IsDue(runs, now))
                continue;
            runs.Add(Run(now, RecalculationState.Failed));
            pauses.Add((now - last).TotalMinutes);
            last = now;
        }

        Assert.Equal([0, 10, 20, 40], pauses);
        Assert.False(NightlyRunSchedule.IsDue([.. runs.Take(1), Run(last, RecalculationState.Done)], last + Duration.FromHours(9)));
    }

    private static Recalculation Run(Instant at, RecalculationState state)
    {
        var run = new Recalculation(Guid.NewGuid(), null, at);
        run.Finish(state, at);
        return run;
    }
}
