using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Worked by hand on one year, 1 February 2026 to 31 January 2027; the case of each is drawn in its name.</summary>
public sealed class GapFinderTests
{
    private static readonly LocalDate From = new(2026, 2, 1);
    private static readonly LocalDate Today = new(2027, 1, 31);
    private static readonly LocalDate End = new(2026, 6, 10);

    // Worn until 10 June, and gone then; the next goes on on 21 June.
    private static readonly UnitAvailability Old = new() { ReadyOn = new(2025, 12, 1), GoneOn = End };

    [Fact]
    public void Bonded_all_along_there_is_no_gap()
    {
        var watch = Of([(new(2026, 1, 5), new(2026, 6, 10)), (new(2026, 6, 10), null)], Old);

        Assert.Empty(watch.Gaps);
        Assert.Equal(365, watch.DaysWatched);
    }

    [Fact]
    public void A_day_off_with_a_unit_resting_in_house_is_no_gap()
    {
        var watch = Of([(new(2026, 1, 5), End), (new(2026, 6, 21), null)], Old with { GoneOn = null });

        Assert.Empty(watch.Gaps);
    }

    [Fact]
    public void A_spare_lying_accepted_covers_the_days_until_it_goes_on()
    {
        var watch = Of([(new(2026, 1, 5), End), (new(2026, 6, 21), null)], Old, new() { ReadyOn = new(2026, 6, 11) });

        Assert.Empty(watch.Gaps);
    }

    [Fact]
    public void Ten_days_between_two_units_are_one_gap_of_ten_days()
    {
        var gap = Assert.Single(Gap(new() { ReadyOn = new(2026, 6, 21) }).Gaps);

        Assert.Equal((new LocalDate(2026, 6, 11), new LocalDate(2026, 6, 20), 10), (gap.From, gap.Through, gap.Days));
        Assert.Equal(GapCause.NothingOnOrder, gap.Cause);
    }

    [Fact]
    public void The_last_unit_was_lost() =>
        Assert.Equal(
            GapCause.LostOrDamaged,
            Assert.Single(Of([(new(2026, 1, 5), End), (new(2026, 6, 21), null)], Old with { IsLost = true }).Gaps).Cause
        );

    // Promised for 1 June, when there was still hair; arrived on the 20th.
    [Fact]
    public void The_order_came_after_its_first_promise() =>
        Assert.Equal(GapCause.CameAfterPromise, CauseOf(ordered: new(2026, 3, 1), promised: new(2026, 6, 1), arrived: new(2026, 6, 20)));

    // Ordered on 1 April, 91 days needed: sure by 1 July. The promise itself lay after the end of the hair, so keeping it would not have helped.
    [Fact]
    public void Ordered_less_than_lead_time_and_preparation_before_the_end() =>
        Assert.Equal(GapCause.OrderedTooLate, CauseOf(ordered: new(2026, 4, 1), promised: new(2026, 6, 15), arrived: new(2026, 6, 20)));

    // 11 March plus 91 days is 10 June, the last day with hair: in time to the day.
    [Theory]
    [InlineData(11, GapCause.TookLonger)]
    [InlineData(12, GapCause.OrderedTooLate)]
    public void In_time_to_the_day(int dayOfMarch, GapCause cause) =>
        Assert.Equal(cause, CauseOf(ordered: new(2026, 3, dayOfMarch), promised: null, arrived: new(2026, 6, 20)));

    // Ordered on 12 June, two days into it.
    [Fact]
    public void What_is_ordered_when_the_hair_is_gone_was_not_on_order() =>
        Assert.Equal(GapCause.NothingOnOrder, CauseOf(ordered: new(2026, 6, 12), promised: null, arrived: new(2026, 6, 20)));

    [Fact]
    public void A_gap_that_goes_on_ends_with_the_period_and_one_that_began_before_begins_with_it()
    {
        var before = Assert.Single(Of([(new(2025, 6, 1), new(2026, 1, 25)), (new(2026, 2, 6), null)]).Gaps);
        var on = Assert.Single(Of([(new(2025, 6, 1), new(2027, 1, 21))]).Gaps);

        Assert.Equal((From, new LocalDate(2026, 2, 5)), (before.From, before.Through));
        Assert.Equal((new LocalDate(2027, 1, 22), Today, 10), (on.From, on.Through, on.Days));
    }

    [Fact]
    public void Whoever_left_is_watched_until_then()
    {
        var watch = GapFinder.Find(new([(new(2026, 1, 5), End)], [], new(2026, 6, 13)), From, Today);

        // 11 and 12 June; 1 February to 12 June are 132 days.
        Assert.Equal((2, 132), (Assert.Single(watch.Gaps).Days, watch.DaysWatched));
    }

    [Fact]
    public void Whoever_wears_nothing_for_longer_than_the_practice_waits_has_left_and_whoever_came_back_has_not()
    {
        var gone = Of([(new(2026, 1, 5), End)]);
        var back = Of([(new(2026, 1, 5), End), (new(2026, 12, 1), null)]);

        Assert.True(gone.HasLapsed);
        Assert.Empty(gone.Gaps);
        Assert.Equal(130, gone.DaysWatched);
        Assert.Equal(173, Assert.Single(back.Gaps).Days);
    }

    [Fact]
    public void Whoever_takes_the_last_unit_home_sound_is_not_watched_until_the_next()
    {
        var home = Of([(new(2026, 1, 5), End), (new(2026, 6, 21), null)], Old with { IsAtHome = true });
        var worn = UnitAvailability.FromRecords(
            UnitState.ReturnedToClient,
            new UnitDates(),
            null,
            (new(2026, 1, 5), End),
            wornOut: true,
            91
        );

        Assert.Empty(home.Gaps);
        Assert.Equal(355, home.DaysWatched);
        Assert.False(worn.IsAtHome);
        Assert.Equal(10, Assert.Single(Of([(new(2026, 1, 5), End), (new(2026, 6, 21), null)], worn).Gaps).Days);
    }

    [Fact]
    public void Before_the_first_bond_nobody_is_watched()
    {
        Assert.Equal((0, 0), (Of([]).DaysWatched, Of([], new UnitAvailability { ReadyOn = From }).Gaps.Count));
        Assert.Equal(31, Of([(new(2027, 1, 1), null)]).DaysWatched);
    }

    [Fact]
    public void An_old_books_unit_is_ready_from_what_the_book_has_and_gone_when_it_was_last_worn()
    {
        var unit = UnitAvailability.FromRecords(UnitState.Retired, new UnitDates(), null, (new(2026, 1, 5), End), wornOut: false, 91);

        Assert.Equal((new LocalDate(2026, 1, 5), End, End), (unit.ReadyOn, unit.GoneOn, unit.WornOutOn));
    }

    [Fact]
    public void What_arrived_and_was_not_accepted_cannot_be_bonded_yet() =>
        Assert.Null(
            UnitAvailability.FromRecords(UnitState.Arrived, new UnitDates { ArrivedOn = End }, null, null, wornOut: false, 91).ReadyOn
        );

    [Fact]
    public void Of_two_worn_out_units_one_had_a_successor_in_house_that_day()
    {
        // The second was accepted ten days before the first went; when it went itself there was only the worn-out one, kept for an emergency.
        var first = new UnitAvailability { ReadyOn = new(2025, 1, 1), WornOutOn = new(2026, 4, 20) };
        var second = new UnitAvailability
        {
            ReadyOn = new(2026, 4, 10),
            GoneOn = new(2026, 11, 2),
            WornOutOn = new(2026, 11, 2),
        };
        var third = new UnitAvailability { ReadyOn = new(2026, 11, 3) };
        var client = new HairHistory([], [first, second, third], LeftOn: null);

        Assert.Equal((1, 2), OnTimeReplacementCounter.Count(client, From, Today));
        Assert.Equal((1, 1), OnTimeReplacementCounter.Count(client with { LeftOn = new(2026, 11, 2) }, From, Today));
    }

    private static GapCause CauseOf(LocalDate ordered, LocalDate? promised, LocalDate arrived) =>
        Assert
            .Single(
                Gap(
                    new()
                    {
                        OrderedOn = ordered,
                        PromisedFor = promised,
                        ArrivedOn = arrived,
                        ReadyOn = new(2026, 6, 21),
                        DaysNeeded = 91,
                    }
                ).Gaps
            )
            .Cause;

    private static ClientPastGaps Gap(UnitAvailability next) => Of([(new(2026, 1, 5), End), (new(2026, 6, 21), null)], Old, next);

    private static ClientPastGaps Of(IReadOnlyList<(LocalDate, LocalDate?)> bonds, params UnitAvailability[] units) =>
        GapFinder.Find(new(bonds, units, LeftOn: null), From, Today);
}
