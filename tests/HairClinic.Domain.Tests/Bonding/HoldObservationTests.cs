using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Tests.Visits;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Bonding;

/// <summary>
/// One test for each way a hold ends or does not, censored as survival analysis defines it (Klein and Moeschberger,
/// Survival Analysis, 2nd ed., chapter 3: exact, right-censored, interval-censored; from memory).
/// </summary>
public sealed class HoldObservationTests
{
    private readonly Head _head = new();

    [Fact]
    public void A_bond_still_tight_at_take_down_counts_as_at_least_that_many_days()
    {
        _head.At(28).Rebond(Head.Sound());

        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 28, null), Seen(daysLater: 300));
    }

    [Fact]
    public void A_lift_the_client_can_date_is_exactly_that_day()
    {
        _head.Bond.ReportLift(new Lift(Day(23), Day(21), LiftZone.Front, SpotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 21, 21), Seen());
    }

    [Theory]
    [InlineData(null, null, false, null)]
    [InlineData(null, null, true, null)]
    [InlineData(null, null, true, 20)]
    [InlineData(14, null, true, null)]
    [InlineData(14, 18, false, null)]
    [InlineData(14, 18, true, 16)]
    [InlineData(null, 18, true, 20)]
    public void What_a_take_down_will_tell_is_what_it_tells_once_it_is_written(int? sound, int? reported, bool foundLifted, int? liftedOn)
    {
        if (sound is { } seen)
            _head.Bond.MarkSeenSound(Day(seen));
        if (reported is { } told)
            _head.Bond.ReportLift(new Lift(Day(told), null, null, SpotFixed: true));
        _head.At(28);
        var found = foundLifted ? Head.Lifted(liftedOn is { } day ? Day(day) : null) : Head.Sound();

        var before = _head.Bond.HoldIfRemoved(_head.Today, found.Reason, found.ToLift(_head.Today));

        Assert.True(_head.Bond.IsOpen);
        _head.Rebond(found);
        Assert.Equal(HoldObservation.From(_head.Bond, _head.Today.PlusDays(300)), before);
    }

    [Theory]
    [InlineData(HoldCensoring.Exact, 5, null)]
    [InlineData(HoldCensoring.Exact, 5, 6)]
    [InlineData(HoldCensoring.Exact, -1, -1)]
    [InlineData(HoldCensoring.Between, 5, 5)]
    [InlineData(HoldCensoring.Between, 5, null)]
    [InlineData(HoldCensoring.AtLeast, 5, 5)]
    public void What_is_no_hold_cannot_be_said(HoldCensoring kind, int lower, int? upper) =>
        Assert.StartsWith(
            $"No hold is {kind}",
            Assert.Throws<ArgumentException>(() => new HoldObservation(kind, lower, upper)).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_lift_is_not_reported_before_it_was() =>
        Assert.Equal(
            "It cannot have lifted after it was reported.",
            Assert.Throws<Refusal>(() => new Lift(Day(12), Day(13), null, SpotFixed: false)).Message
        );

    [Fact]
    public void What_cannot_come_off_so_is_refused_before_anything_is_written()
    {
        Assert.Contains(
            "before it was made",
            Assert.Throws<Refusal>(() => _head.Bond.HoldIfRemoved(Day(-1), RemovalReason.Scheduled, null)).Message,
            StringComparison.Ordinal
        );
        Assert.True(_head.Bond.IsOpen);
    }

    [Fact]
    public void A_lift_nobody_can_date_lies_after_the_last_sound_day_and_by_the_day_it_was_reported()
    {
        _head.Bond.MarkSeenSound(Day(14));
        _head.Bond.ReportLift(new Lift(Day(23), null, null, SpotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 14, 23), Seen());
    }

    [Fact]
    public void A_lift_found_at_take_down_lies_after_the_last_sound_day_and_by_the_visit()
    {
        _head.Bond.MarkSeenSound(Day(14));
        _head.At(28).Rebond(Head.Lifted(on: null));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 14, 28), Seen());
    }

    [Fact]
    public void A_lift_found_at_take_down_that_the_client_noticed_is_exactly_that_day()
    {
        _head.At(28).Rebond(Head.Lifted(on: Day(26)));

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 26, 26), Seen());
    }

    [Fact]
    public void With_no_contact_since_the_bond_was_made_an_undated_lift_lies_anywhere_since()
    {
        _head.At(28).Rebond(Head.Lifted(on: null));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 0, 28), Seen());
    }

    [Fact]
    public void A_lift_put_down_again_ended_the_hold_and_what_follows_is_no_new_bond()
    {
        _head.Bond.ReportLift(new Lift(Day(12), Day(11), LiftZone.Temples, SpotFixed: true));
        _head.Bond.MarkSeenSound(Day(20));
        _head.At(28).Rebond(Head.Sound());

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 11, 11), Seen());
        Assert.Null(_head.Bond.LastSoundOn);
    }

    [Fact]
    public void A_lift_on_the_day_of_application_lies_within_the_first_day()
    {
        _head.Bond.ReportLift(new Lift(Day(0), Day(0), LiftZone.Front, SpotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 0, 1), Seen());
    }

    [Theory]
    [InlineData(RemovalReason.Reaction)]
    [InlineData(RemovalReason.Style)]
    [InlineData(RemovalReason.SalonsChoice)]
    [InlineData(RemovalReason.Other)]
    [InlineData(RemovalReason.Skin)]
    [InlineData(RemovalReason.Operation)]
    [InlineData(RemovalReason.Treatment)]
    [InlineData(RemovalReason.Rest)]
    [InlineData(RemovalReason.Leaving)]
    public void A_bond_taken_off_for_another_reason_held_at_least_that_long(RemovalReason because)
    {
        _head.Bond.Remove(Day(9), because);

        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 9, null), Seen(daysLater: 300));
    }

    [Fact]
    public void A_bond_nobody_saw_again_held_at_least_to_the_last_day_it_was_seen_sound()
    {
        _head.Bond.MarkSeenSound(Day(10));
        _head.Bond.Remove(Day(25), RemovalReason.NotSeenAgain);

        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 10, null), Seen(daysLater: 300));
        Assert.False(RemovalReason.NotSeenAgain.EndsWithTakeDown() || RemovalReason.NotSeenAgain.AllowsNewBond());
    }

    [Theory]
    [InlineData(RemovalReason.BroughtIn)]
    [InlineData(RemovalReason.LostAtHome)]
    public void What_came_off_at_home_held_until_that_day(RemovalReason because)
    {
        _head.Bond.MarkSeenSound(Day(10));
        _head.At(28).Rebond(Head.Sound(because) with { LiftedOn = Day(25) }, _head.NewBond(_head.Spare));

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 25, 25), Seen());
    }

    [Theory]
    [InlineData(RemovalReason.BroughtIn)]
    [InlineData(RemovalReason.LostAtHome)]
    public void What_came_off_at_home_on_a_day_nobody_knows_gives_an_interval_also_in_an_old_book(RemovalReason because)
    {
        _head.Bond.MarkSeenSound(Day(10));
        _head.At(28).Rebond(Head.Sound(because), _head.NewBond(_head.Spare));
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 10, 28), Seen());

        var old = new Head();
        old.Bond.Remove(Day(28), because);
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 0, 28), HoldObservation.From(old.Bond, Day(60)));
    }

    [Fact]
    public void A_bond_still_on_the_head_has_held_at_least_until_today() =>
        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 17, null), HoldObservation.From(_head.Bond, Day(17)));

    [Fact]
    public void Seen_sound_in_the_morning_and_reported_lifted_that_evening_is_that_day()
    {
        _head.Bond.MarkSeenSound(Day(14));
        _head.Bond.ReportLift(new Lift(Day(14), null, null, SpotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 14, 14), Seen());
    }

    [Fact]
    public void An_old_book_that_says_only_that_it_came_off_lifted_gives_an_interval()
    {
        _head.Bond.MarkSeenSound(Day(10));
        _head.Bond.Remove(Day(30), RemovalReason.Lifted);

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 10, 30), Seen());
    }

    [Fact]
    public void A_later_telling_names_the_day_the_first_report_left_open()
    {
        _head.Bond.ReportLift(new Lift(Day(23), null, null, SpotFixed: false));
        _head.At(28).Rebond(Head.Lifted(on: Day(22)));

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 22, 22), Seen());
        Assert.Equal(Day(23), _head.Bond.Lift!.ReportedOn);
    }

    [Fact]
    public void A_lift_before_a_day_on_which_it_was_seen_sound_is_refused_in_a_sentence_that_says_what_to_do()
    {
        _head.Bond.MarkSeenSound(Day(14));

        var refusal = Assert.Throws<Refusal>(() => _head.Bond.ReportLift(new Lift(Day(20), Day(9), null, SpotFixed: false)));

        Assert.StartsWith("It was seen sound on", refusal.Message, StringComparison.Ordinal);
        Assert.Null(_head.Bond.Lift);
    }

    private static LocalDate Day(int number) => Head.BondedOn.PlusDays(number);

    private HoldObservation Seen(int daysLater = 60) => HoldObservation.From(_head.Bond, Day(daysLater));
}
