using System.Diagnostics;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Benchmarks.Reorder;

/// <summary>The reorder day of 100,000 clients: half with one unit, a third with two, the rest with a spare and one in flight.</summary>
public static class ReorderBenchmark
{
    private const int Clients = 100_000;
    private static readonly LocalDate Today = new(2027, 3, 1);
    private static readonly WindowPrior Window = WindowPrior.Of(LifeDistribution.Weibull, 182, 273);

    public static async Task RunAsync(Report report)
    {
        var watch = Stopwatch.StartNew();
        var lead = LeadTime.Of(new LeadTimePrior(56, 77), [60, 58, 71, 66, 80, 49, 63], [12, 40, 75]);
        var days = new WorkshopDays(Today, [new DateInterval(Today.PlusDays(30), Today.PlusDays(44))], 1024);
        var table = LeadTable.Of(lead, RemakeRate.Usual.Mean, 4, 730);
        var waiting = Enumerable.Range(0, 3).Select(i => LeadTable.InFlight(lead, new[] { 75.0, 40, 12 }[i], 0.05, 4, 730)).ToArray();
        report.Say($"tables of one workshop and kind, once: {watch.ElapsedMilliseconds} ms");
        watch.Restart();
        var questions = Ask(table, waiting, days);
        report.Say($"beliefs about {Clients:N0} clients, kept with them: {watch.ElapsedMilliseconds} ms");
        var answers = new GapAnswer[Clients];
        var times = await Rounds.ComputeAsync(
            3,
            () =>
            {
                Parallel.For(
                    0,
                    Clients,
                    () => new ReorderRule(),
                    (i, _, rule) =>
                    {
                        answers[i] = rule.Answer(questions[i]);
                        return rule;
                    },
                    _ => { }
                );
                return Task.CompletedTask;
            }
        );
        var late = answers.Count(a => a.ReorderInDays is null);
        report.Say(
            $"{Clients:N0} reorder days: {Rounds.Median(times[0]):F0} ms of processor time, shared by {Environment.ProcessorCount} cores; {late:N0} of them past already"
        );
    }

    private static GapQuestion[] Ask(LeadTable table, LeadTable[] waiting, WorkshopDays days)
    {
        var dice = new Random(5);
        var population = LifePopulation.Unseen(Window) with { Count = 5000 };
        var questions = new GapQuestion[Clients];
        for (var i = 0; i < Clients; i++)
        {
            var own = Enumerable.Range(0, dice.Next(4)).Select(_ => Spell.At(150 + 130 * dice.NextDouble())).ToArray();
            var rows = LifeRows.Of(own, [], [.. own.Select(_ => Window.Place)], new int[own.Length]);
            var unit = new UnitInHand(Window.Centre, Window.Width, Window.Sigma, dice.Next(200));
            var kind = dice.Next(6);
            questions[i] = new GapQuestion(
                LifeDistribution.Weibull,
                LifeNodes.Of(population, rows).Few(),
                kind < 3 ? [unit] : [unit, unit with { WornDays = dice.Next(60) }],
                kind == 5 ? [new UnitInFlight(unit with { WornDays = 0 }, waiting[dice.Next(3)], days)] : [],
                table,
                days,
                14
            );
        }
        return questions;
    }
}
