using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Practices;

/// <summary>The bounds of what a practice may set for itself: common practice, no source.</summary>
public sealed class PracticeSettingsTests
{
    private readonly PracticeSettings _settings = new(Guid.CreateVersion7(), " Linden Practice ", "IE", "en-IE");

    [Fact]
    public void It_begins_with_the_trades_defaults()
    {
        Assert.Equal(("Linden Practice", "IE", "en-IE"), (_settings.Name, _settings.Region, _settings.Culture));
        Assert.Equal((24, 5, 7, 15), (_settings.CureHours, _settings.DaysBeforeEvent, _settings.OpeningSoonDays, _settings.SlotMinutes));
        Assert.Equal(
            (90, 24, 14, 5),
            (_settings.GrantDaysAfterVisit, _settings.ClientMoveHours, _settings.PreparationDays, _settings.GapChancePercent)
        );
        Assert.Equal((99, 90), (_settings.CelebrationSoundPercent, _settings.JourneySoundPercent));
        Assert.False(_settings.IsDemo);
        _settings.MarkAsDemo();
        Assert.True(_settings.IsDemo);
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
            _settings.SetSchedulingRules(hours, 3, 10, 30);
            Assert.Equal(
                (hours, 3, 10, 30),
                (_settings.CureHours, _settings.DaysBeforeEvent, _settings.OpeningSoonDays, _settings.SlotMinutes)
            );
            return;
        }
        Refused.Saying(
            "A cure lasts 24 to 48 hours; the product's label may ask for more care, never less.",
            () => _settings.SetSchedulingRules(hours, 3, 10, 30)
        );
        Assert.Equal((24, 5), (_settings.CureHours, _settings.DaysBeforeEvent));
    }

    [Fact]
    public void Bookings_start_on_parts_of_an_hour()
    {
        var taken = Enumerable
            .Range(1, 60)
            .Where(minutes => Record.Exception(() => _settings.SetSchedulingRules(24, 5, 7, minutes)) is null);

        Assert.Equal([5, 10, 15, 20, 30], taken);
        Refused.Saying("Bookings can start every 5, 10, 15, 20 or 30 minutes.", () => _settings.SetSchedulingRules(24, 5, 7, 25));
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
            () => _settings.SetGrantDaysAfterVisit(days),
            () => _settings.GrantDaysAfterVisit == days
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
            () => _settings.SetClientMoveHours(hours),
            () => _settings.ClientMoveHours == hours
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
            () => _settings.SetOrderRule(days, 10),
            () => (_settings.PreparationDays, _settings.GapChancePercent) == (days, 10)
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
            () => _settings.SetOrderRule(14, percent),
            () => _settings.GapChancePercent == percent
        );

    [Theory]
    [InlineData(49, 90, false)]
    [InlineData(50, 99, true)]
    [InlineData(99, 50, true)]
    [InlineData(100, 90, false)]
    [InlineData(99, 49, false)]
    [InlineData(99, 100, false)]
    public void No_bond_is_certain_to_last_to_an_event_and_none_as_likely_to_lift(int celebration, int journey, bool taken) =>
        Bounds(
            taken,
            "The chance that a bond lasts to the end of an event is set from 50 to 99 percent.",
            () => _settings.SetEventRule(celebration, journey),
            () => (_settings.CelebrationSoundPercent, _settings.JourneySoundPercent) == (celebration, journey)
        );

    [Fact]
    public void The_guide_is_finished_once()
    {
        var first = Instant.FromUtc(2027, 2, 3, 10, 0);

        _settings.FinishGuide(first);
        _settings.FinishGuide(first + Duration.FromDays(1));

        Assert.Equal(first, _settings.GuideFinishedAt);
    }

    [Fact]
    public void A_row_stays_with_its_practice()
    {
        var practice = Guid.CreateVersion7();
        _settings.AssignToPractice(practice);
        _settings.AssignToPractice(practice);

        var no = Assert.Throws<InvalidOperationException>(() => _settings.AssignToPractice(Guid.CreateVersion7()));

        Assert.Equal($"PracticeSettings {_settings.Id} belongs to another practice.", no.Message);
        Assert.Equal(practice, _settings.PracticeId);
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
