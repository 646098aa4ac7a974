using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Practices;

/// <summary>The bounds of what a practice may set for itself: common practice, no source.</summary>
public sealed class PracticeSettingsTests
{
    private readonly PracticeSettings settings = new(Guid.CreateVersion7(), " Linden Practice ", "IE", "en-IE");

    [Fact]
    public void It_begins_with_the_trades_defaults()
    {
        Assert.Equal(("Linden Practice", "IE", "en-IE"), (settings.Name, settings.Region, settings.Culture));
        Assert.Equal((24, 5, 7, 15), (settings.CureHours, settings.DaysBeforeEvent, settings.OpeningSoonDays, settings.SlotMinutes));
        Assert.Equal(
            (90, 24, 14, 5),
            (settings.GrantDaysAfterVisit, settings.ClientMoveHours, settings.PreparationDays, settings.GapChancePercent)
        );
        Assert.False(settings.IsDemo);
        settings.MarkAsDemo();
        Assert.True(settings.IsDemo);
    }

    [Theory]
    [InlineData(23, false)]
    [InlineData(24, true)]
    [InlineData(48, true)]
    [InlineData(49, false)]
    public void A_cure_lasts_a_day_or_two(int hours, bool taken)
    {
        if (taken)
        {
            settings.SetRhythm(hours, 3, 10, 30);
            Assert.Equal(
                (hours, 3, 10, 30),
                (settings.CureHours, settings.DaysBeforeEvent, settings.OpeningSoonDays, settings.SlotMinutes)
            );
            return;
        }
        Refused.Saying(
            "A cure lasts 24 to 48 hours; the product's label may ask for more care, never less.",
            () => settings.SetRhythm(hours, 3, 10, 30)
        );
        Assert.Equal((24, 5), (settings.CureHours, settings.DaysBeforeEvent));
    }

    [Fact]
    public void Bookings_start_on_parts_of_an_hour()
    {
        var taken = Enumerable.Range(1, 60).Where(minutes => Record.Exception(() => settings.SetRhythm(24, 5, 7, minutes)) is null);

        Assert.Equal([5, 10, 15, 20, 30], taken);
        Refused.Saying("Bookings can start every 5, 10, 15, 20 or 30 minutes.", () => settings.SetRhythm(24, 5, 7, 25));
    }

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(730, true)]
    [InlineData(731, false)]
    public void Another_salon_sees_a_client_for_two_years_at_most(int days, bool taken) =>
        Bounds(
            taken,
            "Another salon may see a client for 0 to 730 days after a visit there.",
            () => settings.KeepGrantsFor(days),
            () => settings.GrantDaysAfterVisit == days
        );

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(168, true)]
    [InlineData(169, false)]
    public void Clients_move_a_visit_until_a_week_before_it_at_the_earliest(int hours, bool taken) =>
        Bounds(
            taken,
            "Clients may change a visit up to 0 to 168 hours before it.",
            () => settings.LetClientsMove(hours),
            () => settings.ClientMoveHours == hours
        );

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(90, true)]
    [InlineData(91, false)]
    public void A_unit_is_prepared_within_a_quarter(int days, bool taken) =>
        Bounds(
            taken,
            "A unit is ready to bond 0 to 90 days after it arrives.",
            () => settings.OrderAhead(days, 10),
            () => (settings.PreparationDays, settings.GapChancePercent) == (days, 10)
        );

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(30, true)]
    [InlineData(31, false)]
    public void No_practice_accepts_no_chance_at_all_or_a_third(int percent, bool taken) =>
        Bounds(
            taken,
            "The accepted chance of a day with no unit that still wears well is 1 to 30 percent.",
            () => settings.OrderAhead(14, percent),
            () => settings.GapChancePercent == percent
        );

    [Fact]
    public void The_guide_is_finished_once()
    {
        var first = Instant.FromUtc(2027, 2, 3, 10, 0);

        settings.FinishGuide(first);
        settings.FinishGuide(first + Duration.FromDays(1));

        Assert.Equal(first, settings.GuideFinishedAt);
    }

    [Fact]
    public void A_row_stays_with_its_practice()
    {
        var practice = Guid.CreateVersion7();
        settings.BelongTo(practice);
        settings.BelongTo(practice);

        var no = Assert.Throws<InvalidOperationException>(() => settings.BelongTo(Guid.CreateVersion7()));

        Assert.Equal($"PracticeSettings {settings.Id} belongs to another practice.", no.Message);
        Assert.Equal(practice, settings.PracticeId);
    }

    private static void Bounds(bool taken, string sentence, Action set, Func<bool> stands)
    {
        if (taken)
            set();
        else
            Refused.Saying(sentence, set);
        Assert.Equal(taken, stands());
    }
}
