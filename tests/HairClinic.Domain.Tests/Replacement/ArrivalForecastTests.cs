using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class ArrivalForecastTests
{
    private static readonly LocalDate Today = new(2031, 3, 4);
    private static readonly LeadTimePrior Row = new(56, 77);

    [Theory]
    [InlineData(10)]
    [InlineData(80)]
    [InlineData(200)]
    public void An_order_that_waits_is_expected_given_that_it_is_not_here_and_so_never_on_a_day_that_is_past(int waited)
    {
        var lead = LeadTime.Learn(Row, [], [waited]);
        var days = new ArrivalForecast(
            LeadTimeTable.BuildRemaining(lead, waited, remakeRate: 0, 0, 730),
            new(Today, [], 1024),
            Today,
            1024
        );

        var (early, late) = days.Likely;

        Assert.True(Today <= early && early <= days.Quantile(0.5) && days.Quantile(0.5) <= late);
        // Of the orders that took longer than it has waited, one in ten is here by the first day and nine in ten by the last, and not a
        // day before.
        foreach (var (day, later) in new[] { (early, 0.9), (late, 0.1) })
        {
            var here = Period.DaysBetween(Today, day);
            Assert.True(lead.SurvivalGiven(waited, here + 0.5) <= later);
            Assert.True(lead.SurvivalGiven(waited, here - 0.5) > later);
        }
    }

    [Fact]
    public void Closed_days_of_the_workshop_put_it_off()
    {
        var table = LeadTimeTable.BuildRemaining(LeadTime.Learn(Row, [], [200]), 200, remakeRate: 0, 0, 730);
        var open = new ArrivalForecast(table, new(Today, [], 1024), Today, 1024);
        var closed = new ArrivalForecast(table, new(Today, [new(Today.PlusDays(1), Today.PlusDays(14))], 1024), Today, 1024);

        Assert.Equal(open.Quantile(0.5).PlusDays(14), closed.Quantile(0.5));
    }
}
