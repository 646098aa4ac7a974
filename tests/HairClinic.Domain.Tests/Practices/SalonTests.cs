using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Practices;

public sealed class SalonTests
{
    private static readonly LocalDate Day = new(2027, 2, 3);
    private readonly Salon _salon = new(Guid.CreateVersion7(), " Elm Row ", "Europe/London", "GBP");

    [Fact]
    public void A_zone_that_is_in_no_database_is_refused_and_nothing_changes()
    {
        Refused.Saying(
            "“{0}” is not a time zone of the IANA database, such as Europe/London.",
            () => _salon.Edit("Quay", "Europe/Elm", "EUR", null, null)
        );

        Assert.Equal(("Elm Row", "Europe/London", "GBP"), (_salon.Name, _salon.Zone, _salon.Currency));
    }

    [Theory]
    [InlineData("gbp")]
    [InlineData("GB")]
    [InlineData("GBPS")]
    [InlineData("G£P")]
    [InlineData("GB1")]
    public void Money_has_a_code_of_three_capital_letters(string code) =>
        Refused.Saying(
            "“{0}” is not a currency code of three capital letters, such as GBP.",
            () => _salon.Edit("Elm Row", "Europe/London", code, null, null)
        );

    [Fact]
    public void Hours_replace_those_of_their_weekday_alone_and_stand_in_order()
    {
        Set(IsoDayOfWeek.Monday, (14, 18), (9, 13));
        Set(IsoDayOfWeek.Tuesday, (9, 17));

        Set(IsoDayOfWeek.Monday, (13, 18), (8, 13));

        Assert.Equal(
            [(IsoDayOfWeek.Tuesday, 9, 17), (IsoDayOfWeek.Monday, 8, 13), (IsoDayOfWeek.Monday, 13, 18)],
            _salon.Hours.Select(h => (h.Day, h.Opens.Hour, h.Closes.Hour))
        );
        Set(IsoDayOfWeek.Tuesday);
        Assert.DoesNotContain(_salon.Hours, h => h.Day == IsoDayOfWeek.Tuesday);
    }

    [Fact]
    public void A_spell_that_closes_before_it_opens_or_laps_over_another_changes_nothing()
    {
        Set(IsoDayOfWeek.Monday, (9, 17));

        Refused.Saying("The salon must close after it opens.", () => Set(IsoDayOfWeek.Monday, (9, 9)));
        Refused.Saying("Two opening times of one day overlap.", () => Set(IsoDayOfWeek.Monday, (12, 18), (9, 13)));

        Assert.Equal(17, Assert.Single(_salon.Hours).Closes.Hour);
    }

    [Fact]
    public void A_closure_may_be_one_day_long_ends_no_earlier_than_it_starts_and_can_be_taken_back()
    {
        var (one, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        _salon.AddClosure(one, Day, Day, "Floor");
        _salon.AddClosure(other, Day.PlusDays(7), Day.PlusDays(9), "Holiday");

        Refused.Saying(
            "The closure ends before it starts.",
            () => _salon.AddClosure(Guid.CreateVersion7(), Day, Day.PlusDays(-1), "Floor")
        );
        Assert.Equal(2, _salon.Closures.Count);

        _salon.RemoveClosure(one);
        var left = Assert.Single(_salon.Closures);
        Assert.Equal((other, Day.PlusDays(7), Day.PlusDays(9), "Holiday"), (left.Id, left.From, left.To, left.Reason));
    }

    // Half past eleven at night in Greenwich is the next day in London's summer, and the same day in its winter.
    [Theory]
    [InlineData(2, 3)]
    [InlineData(7, 4)]
    public void A_day_is_the_salons_own(int month, int day) =>
        Assert.Equal(new LocalDate(2027, month, day), _salon.DayOf(Instant.FromUtc(2027, month, 3, 23, 30)));

    [Fact]
    public void A_salon_that_is_retired_stays_so()
    {
        Assert.False(_salon.Retired);

        _salon.Retire();

        Assert.True(_salon.Retired);
    }

    private void Set(IsoDayOfWeek day, params (int Opens, int Closes)[] spells) =>
        _salon.SetHours(day, spells.Select(s => (Guid.CreateVersion7(), new LocalTime(s.Opens, 0), new LocalTime(s.Closes, 0))));
}
