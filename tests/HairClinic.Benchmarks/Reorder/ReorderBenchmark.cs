using System.Diagnostics;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Benchmarks.Reorder;

/// <summary>
/// The reorder day of 100,000 clients all in, from their own units' spells to the day: half with one unit, a third with two, the rest
/// with a spare and one in flight; up to three units that are over.
/// </summary>
public static class ReorderBenchmark
{
    private const int Clients = 100_000;
    private const int Threads = 2;
    private static readonly LocalDate Today = new(2027, 3, 1);
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly PopulationParameters Population = PopulationParameters.FromPriors(Window) with { Count = 5000 };
    private static readonly WorkshopWorkingDays Days = new(Today, [new DateInterval(Today.PlusDays(30), Today.PlusDays(44))], 1024);

    public static async Task RunAsync(Report report)
    {
        var watch = Stopwatch.StartNew();
        var lead = LeadTime.Learn(new LeadTimePrior(56, 77), [60, 58, 71, 66, 80, 49, 63], [12, 40, 75]);
        var table = LeadTimeTable.FromLeadTime(lead, RemakeRate.Usual.Mean, 4, 730);
        var waiting = Enumerable
            .Range(0, 3)
            .Select(i => LeadTimeTable.BuildRemaining(lead, new[] { 75.0, 40, 12 }[i], 0.05, 4, 730))
            .ToArray();
        report.Say($"tables of one workshop and kind, once: {watch.ElapsedMilliseconds} ms");
        var dice = new Random(5);
        var book = Enumerable.Range(0, Clients).Select(_ => Draw(dice, waiting)).ToArray();
        var (beliefs, answers) = (new ClientEffectNodes[Clients], new ReorderAnswer[Clients]);
        Func<Task> believe = () => Each((i, _) => beliefs[i] = Believe(book[i]));
        Func<Task> allIn = () => Each((i, rule) => answers[i] = rule.Answer(Ask(book[i], Believe(book[i]), table)));
        var processor = await Rounds.ComputeAsync(3, believe, allIn);
        var wall = await Rounds.TimeAsync(3, believe, allIn);
        var late = answers.Count(a => a.ReorderInDays is null);
        report.Say($"{Clients:N0} reorder days, beliefs about the clients from their own spells included; {late:N0} of them past already");
        report.Say($"  all in   {Told(processor[1], wall[1])}");
        report.Say($"  beliefs  {Told(processor[0], wall[0])}");
        report.Say(
            $"check: mean chance if ordered today {answers.Average(a => a.GapIfOrderedToday):F12}, days {answers.Sum(a => a.ReorderInDays ?? 0)}"
        );
    }

    private static string Told(IReadOnlyList<double> processor, IReadOnlyList<double> wall) =>
        $"{Rounds.Median(wall):F0} ms by the wall clock on {Threads} threads (quickest {wall.Min():F0}), {Rounds.Median(processor):F0} ms of processor time";

    private static Task Each(Action<int, ReorderRule> work)
    {
        Parallel.For(
            0,
            Clients,
            new ParallelOptions { MaxDegreeOfParallelism = Threads },
            () => new ReorderRule(),
            (i, _, rule) =>
            {
                work(i, rule);
                return rule;
            },
            _ => { }
        );
        return Task.CompletedTask;
    }

    private static (Spell[] Own, RemainingLife[] InHand, UnitOnOrder[] InFlight) Draw(Random dice, LeadTimeTable[] waiting)
    {
        var over = Enumerable.Range(0, dice.Next(4)).Select(_ => Spell.Exact(150 + 130 * dice.NextDouble())).ToArray();
        var unit = new RemainingLife(Window.Centre, Window.Width, Window.Sigma, dice.Next(200));
        var kind = dice.Next(6);
        RemainingLife[] inHand = kind < 3 ? [unit] : [unit, unit with { WornDays = dice.Next(60) }];
        UnitOnOrder[] inFlight = kind == 5 ? [new UnitOnOrder(unit with { WornDays = 0 }, waiting[dice.Next(3)], Days)] : [];
        return ([.. over, .. inHand.Select(hand => Spell.RightCensored(hand.WornDays))], inHand, inFlight);
    }

    private static ClientEffectNodes Believe((Spell[] Own, RemainingLife[], UnitOnOrder[]) client)
    {
        var places = new RowLocationScale[client.Own.Length];
        Array.Fill(places, Window.Place);
        return ClientEffectNodes.For(Population, LifetimeFitRows.Create(client.Own, [], places, new int[places.Length])).Reduced();
    }

    private static ReorderInput Ask(
        (Spell[], RemainingLife[] InHand, UnitOnOrder[] InFlight) client,
        ClientEffectNodes belief,
        LeadTimeTable table
    ) => new(LifeDistribution.Weibull, belief, client.InHand, client.InFlight, table, Days, 14);
}
