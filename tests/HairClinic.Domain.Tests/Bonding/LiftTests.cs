using HairClinic.Domain.Bonding;
using HairClinic.Domain.Tests.Visits;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Bonding;

/// <summary>What “about when” says of a hold where nobody knows the day: common practice, no source.</summary>
public sealed class LiftTests
{
    private readonly Head _head = new();

    [Theory]
    [InlineData(SinceWhen.TwoOrThreeDays, 25, 26)]
    [InlineData(SinceWhen.AboutAWeek, 19, 23)]
    [InlineData(SinceWhen.NotKnown, 14, 28)]
    public void About_when_narrows_the_interval(SinceWhen since, int lower, int upper)
    {
        _head.Bond.MarkSeenSound(Day(14));

        _head.Bond.ReportLift(Lift.Tell(Day(28), null, since, null, spotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, lower, upper), Seen());
    }

    [Fact]
    public void A_day_that_is_known_says_more_than_about_when()
    {
        _head.Bond.ReportLift(Lift.Tell(Day(28), Day(26), SinceWhen.AboutAWeek, null, spotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 26, 26), Seen());
        Assert.Equal((null, Day(26)), (_head.Bond.Lift!.EarliestOn, _head.Bond.Lift.UpBy));
    }

    [Fact]
    public void A_sound_day_within_about_a_week_is_the_earlier_end()
    {
        _head.Bond.MarkSeenSound(Day(21));

        _head.Bond.ReportLift(Lift.Tell(Day(28), null, SinceWhen.AboutAWeek, null, spotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 21, 23), Seen());
    }

    [Fact]
    public void The_bond_was_made_within_about_a_week()
    {
        _head.Bond.ReportLift(Lift.Tell(Day(6), null, SinceWhen.AboutAWeek, null, spotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 0, 1), Seen());
    }

    [Fact]
    public void What_cannot_be_is_refused_in_words()
    {
        Refused.Saying(
            "A bond cannot lift before it was made, on {0}.",
            () => _head.Bond.ReportLift(Lift.Tell(Day(4), null, SinceWhen.AboutAWeek, null, spotFixed: false))
        );
        _head.Bond.MarkSeenSound(Day(14));
        Refused.Saying(
            "It was seen sound on {0}. If the day is not certain, say that it is not known.",
            () => _head.Bond.ReportLift(Lift.Tell(Day(15), null, SinceWhen.TwoOrThreeDays, null, spotFixed: false))
        );
        var told = new Lift(Day(15), null, null, SpotFixed: false);
        Refused.Saying("It cannot have lifted after it was reported.", () => told.Between(Day(14), Day(16)));
        Refused.Saying("It cannot have lifted by {0} and after {1}.", () => told.Between(Day(14), Day(13)));
        Assert.Null(_head.Bond.Lift);
    }

    [Fact]
    public void A_later_telling_says_about_when_or_the_day_where_the_first_left_it_open()
    {
        _head.Bond.ReportLift(new Lift(Day(21), null, null, SpotFixed: false));

        _head.Bond.ReportLift(Lift.Tell(Day(28), null, SinceWhen.AboutAWeek, LiftZone.Nape, spotFixed: false));
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 19, 21), Seen());
        Assert.Equal((Day(21), LiftZone.Nape), (_head.Bond.Lift!.ReportedOn, _head.Bond.Lift.Zone));

        _head.Bond.ReportLift(Lift.Tell(Day(29), null, SinceWhen.TwoOrThreeDays, null, spotFixed: false));
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 19, 21), Seen());

        _head.Bond.ReportLift(new Lift(Day(29), Day(20), null, SpotFixed: false));
        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 20, 20), Seen());
    }

    [Fact]
    public void About_when_it_cannot_have_been_any_more_adds_nothing()
    {
        _head.Bond.MarkSeenSound(Day(20));
        _head.Bond.ReportLift(new Lift(Day(21), null, null, SpotFixed: false));

        _head.Bond.ReportLift(Lift.Tell(Day(24), null, SinceWhen.AboutAWeek, null, spotFixed: false));
        _head.Bond.ReportLift(Lift.Tell(Day(24), null, SinceWhen.TwoOrThreeDays, null, spotFixed: false));

        Assert.Equal(new HoldObservation(HoldCensoring.Between, 20, 21), Seen());
    }

    // Worn days and days without hair go by the day by which it was off.
    [Theory]
    [InlineData(RemovalReason.BroughtIn)]
    [InlineData(RemovalReason.LostAtHome)]
    public void What_came_off_at_home_about_a_week_ago_was_off_by_then(RemovalReason because)
    {
        var found = Head.Sound(because) with { LiftedSince = SinceWhen.AboutAWeek };
        var before = _head.At(28).Bond.HoldIfRemoved(found.OffOn(Day(28)), found.Reason, found.ToLift(Day(28)));

        _head.Rebond(found, _head.NewBond(_head.Spare));

        Assert.Equal((Day(23), before), (_head.Bond.RemovedOn, Seen()));
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 19, 23), before);
    }

    private static LocalDate Day(int number) => Head.BondedOn.PlusDays(number);

    private HoldObservation Seen() => HoldObservation.From(_head.Bond, Day(300));
}
