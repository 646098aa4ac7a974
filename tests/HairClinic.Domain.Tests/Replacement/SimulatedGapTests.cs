using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>A million seeded draws of the same story: two units of one client, one in flight, remakes and a closure.</summary>
public sealed class SimulatedGapTests
{
    private const int Draws = 1_000_000;
    private const double Waited = 30;
    private static readonly LocalDate Today = new(2027, 3, 1);
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 60, 120);
    private static readonly WorkshopWorkingDays Days = new(Today, [new DateInterval(Today.PlusDays(20), Today.PlusDays(33))], 1024);
    private static readonly LeadTime Lead = LeadTime.Learn(new LeadTimePrior(56, 77), [], [Waited]);

    [Fact]
    public void The_engine_agrees_within_the_draws_own_error()
    {
        var life = new RemainingLife(Window.Centre, Window.Width, Window.Sigma, 0);
        var question = new ReorderInput(
            LifeDistribution.Weibull,
            ClientEffectNodes.For(PopulationParameters.FromPriors(Window)).Reduced(),
            [life with { WornDays = 50 }, life],
            [new UnitOnOrder(life, LeadTimeTable.BuildRemaining(Lead, Waited, 0.1, 3, 730), Days)],
            LeadTimeTable.FromLeadTime(Lead, 0.1, 3, 730),
            Days,
            10
        );
        var rule = new ReorderRule();
        var curve = new double[101];
        rule.GapByOrderDay(question, curve);
        var dice = new Random(20270301);
        var (today, later, before) = (0, 0, 0);
        for (var draw = 0; draw < Draws; draw++)
        {
            var place = Normal(dice) * Math.Sqrt(Math.Pow(Window.ClientFactor, 2) + Math.Pow(Window.PracticeFactor, 2));
            var hair = Remaining(dice, place, 50) + Remaining(dice, place, 0);
            var all = hair + Remaining(dice, place, 0);
            if (hair < Arrival(0, Remade(dice, OfFlight(dice))) + 10)
                before++;
            var lead = Remade(dice, Fresh(dice));
            if (all < Arrival(0, lead) + 10)
                today++;
            if (all < Arrival(100, lead) + 10)
                later++;
        }

        Near(today, curve[0]);
        Near(later, curve[100]);
        Near(before, rule.GapChanceBeforeOrderInFlight(question, 1));
    }

    private static void Near(int count, double chance)
    {
        var error = Math.Sqrt(chance * (1 - chance) / Draws);
        Assert.InRange((double)count / Draws, chance - 4 * error - 5e-5, chance + 4 * error + 5e-5);
    }

    // The calendar day on which so many working days after the order are over, in days with a fraction.
    private static double Arrival(int orderedOn, double working)
    {
        var total = Days.CountUntil(orderedOn) + working;
        var whole = (int)Math.Min(total, 4000);
        var day = Days.CalendarDayAfter(whole);
        return day == int.MaxValue ? total + 14 : Math.Max(day, orderedOn) + (total - whole);
    }

    private static double Remade(Random dice, double first) => dice.NextDouble() < 0.1 ? first + 3 + Fresh(dice) : first;

    private static double Fresh(Random dice) => Inverse(1 - dice.NextDouble(), Lead.Survival);

    private static double OfFlight(Random dice) => Inverse(1 - dice.NextDouble(), d => Lead.SurvivalGiven(Waited, d));

    private static readonly Dictionary<string, double[]> Tables = [];

    // Inverse of a survival curve by a fine table: the draw's own way, apart from the engine's daily one.
    private static double Inverse(
        double height,
        Func<double, double> later,
        [System.Runtime.CompilerServices.CallerMemberName] string name = ""
    )
    {
        if (!Tables.TryGetValue(name, out var table))
            Tables[name] = table = [.. Enumerable.Range(0, 8000).Select(i => -later(i / 8.0))];
        var index = Array.BinarySearch(table, -height);
        index = index < 0 ? ~index : index;
        if (index >= table.Length)
            return 1000;
        if (index == 0)
            return 0;
        return (index - 1 + (table[index - 1] + height) / (table[index - 1] - table[index])) / 8;
    }

    private static double Remaining(Random dice, double place, int age)
    {
        var centre = Window.Centre + Window.Width * place;
        var worn = age == 0 ? 0 : Math.Exp((Math.Log(age) - centre) / Window.Sigma);
        return Math.Exp(centre + Window.Sigma * Math.Log(worn - Math.Log(1 - dice.NextDouble()))) - age;
    }

    private static double Normal(Random dice) =>
        Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
}
