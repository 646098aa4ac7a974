using HairClinic.Web.Features.Settings;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditSalon;

namespace HairClinic.Web.Tests.Features.Settings.EditSalon;

public sealed class EditSalonRulesTests
{
    [Theory]
    [InlineData("09:00", null, null, null, "Give both times of a stretch, or neither.")]
    [InlineData(null, null, "14:00", "18:00", "A second stretch comes after a first one.")]
    [InlineData("12:00", "09:00", null, null, "A stretch must end after it starts.")]
    [InlineData("09:00", "14:00", "13:00", "18:00", "The second stretch starts before the first has ended.")]
    public void Hours_that_cannot_be_are_told(string? from, string? to, string? secondFrom, string? secondTo, string message)
    {
        var day = new WeekdayHoursInput
        {
            Day = IsoDayOfWeek.Monday,
            From = Time(from),
            To = Time(to),
            SecondFrom = Time(secondFrom),
            SecondTo = Time(secondTo),
        };
        var input = Good() with { Hours = [day] };

        var error = Assert.Single(new EditSalonRules().Validate(input).Errors);

        Assert.Equal((message, "Hours[0].From"), (error.ErrorMessage, error.PropertyName));
    }

    [Theory]
    [InlineData("Europe/Atlantis", "GBP")]
    [InlineData("Europe/London", "pounds")]
    public void A_zone_or_currency_nobody_knows_is_told(string zone, string currency) =>
        Assert.Single(new EditSalonRules().Validate(Good() with { Zone = zone, Currency = currency }).Errors);

    [Fact]
    public void A_closure_that_ends_before_it_starts_is_told()
    {
        var input = Good() with { Closures = [new DaysOffInput { From = new LocalDate(2027, 3, 7), To = new LocalDate(2027, 3, 1) }] };

        Assert.Equal("The last day comes before the first.", Assert.Single(new EditSalonRules().Validate(input).Errors).ErrorMessage);
    }

    private static Slice.Input Good() =>
        new()
        {
            Name = "Elm Row",
            Zone = "Europe/London",
            Currency = "GBP",
        };

    private static LocalTime? Time(string? text) =>
        text is null ? null : NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(text).Value;
}
