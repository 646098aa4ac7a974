using HairClinic.Domain.Replacement;
using MathNet.Numerics.Distributions;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class LeadTimeTests
{
    private static readonly LeadTimePrior Row = new(56, 77);

    [Fact]
    public void The_practices_row_is_told_back_before_any_order()
    {
        var lead = LeadTime.Learn(Row, [], []);

        Assert.Equal(0.2077, Row.Scale, 5e-5);
        Assert.Equal(0.5, lead.Survival(56), 1e-12);
        Assert.Equal(0.1, lead.Survival(77), 1e-5);
        Assert.Equal(1, lead.Survival(0));
        Assert.Equal(StudentT.CDF(Math.Log(56), Row.Scale, 4, Math.Log(90)), 1 - lead.Survival(90), 1e-12);
    }

    // By hand from the normal-inverse-gamma update (Gelman et al., Bayesian Data Analysis, section 3.3; from memory).
    [Fact]
    public void Arrived_orders_move_it_as_the_conjugate_update_says()
    {
        double[] days = [60, 70, 65, 80];
        var logs = days.Select(d => Math.Log(d)).ToArray();
        var (mean, n) = (logs.Average(), logs.Length);
        var centre = (4 * Math.Log(56) + n * mean) / (4 + n);
        var squares =
            4 * Row.Scale * Row.Scale * 0.8 + logs.Sum(l => (l - mean) * (l - mean)) + 4.0 * n / (4 + n) * Math.Pow(mean - Math.Log(56), 2);
        var scale = Math.Sqrt(squares / 8 * (1 + 1 / 8.0));

        var lead = LeadTime.Learn(Row, days, []);

        Assert.Equal(4, lead.Arrived);
        foreach (var at in new[] { 40.0, 60, 90, 150 })
            Assert.Equal(1 - StudentT.CDF(centre, scale, 8, Math.Log(at)), lead.Survival(at), 1e-12);
    }

    // An order placed today says nothing yet, but goes through the grid: it must give the closed form back.
    [Fact]
    public void The_grid_of_means_and_variances_is_the_students_t()
    {
        foreach (double[] arrived in new double[][] { [], [60, 70, 65, 80, 58, 61, 77, 90] })
        {
            var (closed, grid) = (LeadTime.Learn(Row, arrived, []), LeadTime.Learn(Row, arrived, [0]));
            for (var days = 10; days < 400; days += 30)
                Assert.Equal(closed.Survival(days), grid.Survival(days), 1e-8);
        }
    }

    [Fact]
    public void Read_from_its_row_it_says_the_same_until_the_practices_row_changes()
    {
        var stored = new StoredLead(Guid.CreateVersion7(), Guid.CreateVersion7());
        stored.LearnFrom(new LocalDate(2027, 2, 3), Row, [60, 70, 65, 80], [12, 40, 90], remade: 1, kept: 9);
        var anew = LeadTime.Learn(Row, [60, 70, 65, 80], [12, 40, 90]);

        var read = stored.LeadTimeUnderPrior(Row);

        Assert.Equal((4, 3), (read.Arrived, read.InFlight));
        for (var days = 1; days < 730; days += 9)
        {
            Assert.Equal(anew.Survival(days), read.Survival(days));
            Assert.Equal(anew.SurvivalGiven(40, days), read.SurvivalGiven(40, days));
        }
        Assert.Equal(
            LeadTimeTable.FromLeadTime(anew, 0.1, 3, 730).Survival(70),
            LeadTimeTable.FromLeadTime(stored.LeadTimeUnderPrior(Row), 0.1, 3, 730).Survival(70)
        );
        Assert.Equal(
            LeadTime.Learn(new(40, 77), [60, 70, 65, 80], [12, 40, 90]).Survival(50),
            stored.LeadTimeUnderPrior(new(40, 77)).Survival(50)
        );
    }

    // Far out in the tail, where next to nothing is left out, against the plain sum.
    [Fact]
    public void What_is_left_out_as_next_to_nothing_is_next_to_nothing()
    {
        var lead = LeadTime.Learn(Row, [60, 70, 65, 80, 58, 61, 77, 90], [200]);

        var left = Enumerable.Range(1, 700).Select(days => lead.SurvivalGiven(200, days)).ToList();

        Assert.All(left.Zip(left.Skip(1)), pair => Assert.True(pair.First >= pair.Second));
        Assert.All([1, 30, 300], days => Assert.Equal(lead.Survival(200 + days) / lead.Survival(200), lead.SurvivalGiven(200, days), 0.2));
    }

    [Fact]
    public void What_is_left_of_the_one_order_in_flight_is_the_tail_beyond_the_days_waited()
    {
        var (closed, lead) = (LeadTime.Learn(Row, [], []), LeadTime.Learn(Row, [], [50]));

        foreach (var days in new[] { 1.0, 10, 30, 100 })
            Assert.Equal(closed.Survival(50 + days) / closed.Survival(50), lead.SurvivalGiven(50, days), 1e-8);
    }

    [Fact]
    public void What_is_left_of_an_order_that_was_left_out_is_the_tail_beyond_its_days_too()
    {
        var (closed, grid) = (LeadTime.Learn(Row, [60, 70], []), LeadTime.Learn(Row, [60, 70], [0]));

        foreach (var days in new[] { 1.0, 10, 100, 300 })
            Assert.Equal(closed.Survival(400 + days) / closed.Survival(400), grid.SurvivalGiven(400, days, learnt: false), 2e-3);
        Assert.Equal(closed.Survival(110) / closed.Survival(100), grid.SurvivalGiven(100, 10, learnt: false), 1e-6);
    }

    [Fact]
    public void An_order_that_is_late_makes_the_others_look_later()
    {
        var (before, after) = (LeadTime.Learn(Row, [60, 58], []), LeadTime.Learn(Row, [60, 58], [85, 20]));

        Assert.Equal(2, after.InFlight);
        Assert.All(Enumerable.Range(5, 16), i => Assert.True(after.Survival(10 * i) > before.Survival(10 * i)));
        Assert.True(after.Survival(80) > before.Survival(80) + 0.02);
    }

    [Fact]
    public void Remakes_add_an_inspection_and_a_second_lead_time()
    {
        var lead = LeadTime.Learn(Row, [], []);
        var table = LeadTimeTable.FromLeadTime(lead, 0.2, 3, 730);
        // By the definition: the first unit is remade, and both lead times and the inspection have to be over.
        var remade =
            Enumerable.Range(0, 200).Sum(d => (lead.Survival(d - 0.5) - lead.Survival(d + 0.5)) * lead.Survival(150.5 - 3 - d))
            + lead.Survival(199.5);

        Assert.Equal(0.8 * lead.Survival(150.5) + 0.2 * remade, table.Survival(150), 1e-9);
        Assert.Equal(1, table.Survival(-1), 1e-12);
    }

    [Fact]
    public void A_remake_rate_is_a_belief_that_orders_move()
    {
        Assert.Equal(0.05, RemakeRate.Usual.Mean, 1e-12);
        Assert.Equal(0.1, RemakeRate.Usual.AddOutcomes(remade: 3, kept: 17).Mean, 1e-12);
    }

    [Fact]
    public void A_workshops_closure_is_added_to_the_arrival_and_not_to_the_lead_time()
    {
        var today = new LocalDate(2027, 7, 1);
        DateInterval[] closures =
        [
            new(new LocalDate(2027, 7, 11), new LocalDate(2027, 7, 20)),
            new(new LocalDate(2027, 7, 15), new LocalDate(2027, 7, 22)),
        ];
        var days = new WorkshopWorkingDays(today, closures, 100);

        Assert.Equal((9, 9, 9, 10), (days.CountUntil(9), days.CountUntil(10), days.CountUntil(21), days.CountUntil(22)));
        Assert.Equal((9, 22, 102 - 1), (days.CalendarDayAfter(9), days.CalendarDayAfter(10), days.CalendarDayAfter(10) + 79));
        Assert.Equal(int.MaxValue, days.CalendarDayAfter(200));
        Assert.Equal(18, WorkshopWorkingDays.CountBetween(today, new LocalDate(2027, 7, 31), closures));
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(10, 10)]
    [InlineData(10, double.NaN)]
    public void A_row_without_sense_is_refused(double half, double nine) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new LeadTimePrior(half, nine));

    [Fact]
    public void A_day_on_which_the_workshop_is_closed_is_not_worked_the_first_is_not_counted_and_the_last_is()
    {
        var from = new LocalDate(2027, 3, 1);

        Assert.Equal(4, WorkshopWorkingDays.CountBetween(from, from.PlusDays(4), []));
        Assert.Equal(4, WorkshopWorkingDays.CountBetween(from, from.PlusDays(4), [new(from, from)]));
        Assert.Equal(3, WorkshopWorkingDays.CountBetween(from, from.PlusDays(4), [new(from.PlusDays(1), from.PlusDays(1))]));
        Assert.Equal(3, WorkshopWorkingDays.CountBetween(from, from.PlusDays(4), [new(from.PlusDays(4), from.PlusDays(9))]));
        Assert.Equal(0, WorkshopWorkingDays.CountBetween(from, from.PlusDays(-1), []));
    }
}
