using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

public sealed class BondStateTests
{
    private static readonly Instant AppliedAt = Instant.FromUtc(2026, 3, 3, 15, 0);
    private static readonly LocalDate AppliedOn = new(2026, 3, 3);

    private static readonly BondDates Bond = new(new(2026, 3, 31), new(2026, 4, 28)) { AppliedAt = AppliedAt };

    [Theory]
    [InlineData(2026, 3, 30, BondState.Held)]
    [InlineData(2026, 3, 31, BondState.WindowOpen)]
    [InlineData(2026, 4, 28, BondState.WindowOpen)]
    [InlineData(2026, 4, 29, BondState.Overdue)]
    public void Both_ends_of_the_window_belong_to_it(int year, int month, int day, BondState expected) =>
        Assert.Equal(expected, Bond.StateOn(new(year, month, day)));

    [Fact]
    public void A_fresh_bond_cures_for_as_long_as_the_practice_says()
    {
        var longer = Bond with { Cure = new(36) };
        var next = AppliedOn.PlusDays(1);

        Assert.Equal(BondState.Held, Bond.StateOn(next, AppliedAt + Duration.FromHours(24)));
        Assert.Equal(BondState.Curing, longer.StateOn(next, AppliedAt + Duration.FromHours(24)));
        Assert.Equal(Duration.FromHours(12), longer.Cure.Remaining(AppliedAt, AppliedAt + Duration.FromHours(24)));
        Assert.Equal(Duration.Zero, longer.Cure.Remaining(AppliedAt, AppliedAt + Duration.FromHours(40)));
    }

    [Fact]
    public void A_bond_from_an_old_book_has_no_cure_to_count_down()
    {
        var old = Bond with { AppliedAt = null };

        Assert.Equal(BondState.Held, old.StateOn(AppliedOn, AppliedAt + Duration.FromHours(1)));
    }

    [Fact]
    public void A_lift_shows_from_the_day_it_is_known_even_inside_the_cure_or_past_the_window()
    {
        var lifted = Bond with { LiftedOn = AppliedOn };

        Assert.Equal(BondState.Lifted, lifted.StateOn(AppliedOn, AppliedAt + Duration.FromHours(1)));
        Assert.Equal(BondState.Lifted, lifted.StateOn(new(2026, 6, 1)));
        Assert.Equal(BondState.Held, (Bond with { LiftedOn = new(2026, 3, 20) }).StateOn(new(2026, 3, 19)));
    }

    [Fact]
    public void A_bond_taken_down_is_removed_whatever_went_before()
    {
        var removed = Bond with { LiftedOn = new(2026, 3, 20), RemovedOn = new(2026, 3, 22) };

        Assert.Equal(BondState.Lifted, removed.StateOn(new(2026, 3, 21)));
        Assert.Equal(BondState.Removed, removed.StateOn(new(2026, 3, 22)));
        Assert.Equal(BondState.Removed, removed.StateOn(new(2026, 6, 1)));
    }

    [Theory]
    [InlineData(23)]
    [InlineData(49)]
    public void A_cure_lasts_24_to_48_hours(int hours) => Assert.Throws<ArgumentOutOfRangeException>(() => new Cure(hours));

    [Fact]
    public void A_cure_nobody_set_is_the_usual_24_hours() => Assert.Equal(new Cure(24), default);
}
