using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.LoadAhead;

/// <summary>52 weeks ahead of up to 100,000 clients in twenty salons, beliefs about each client from their own bonds included.</summary>
public static class LoadAheadBenchmark
{
    private const int Weeks = 52;
    private const int Salons = 20;
    private const int Threads = 2;
    private static readonly VisitTypeMinutes Minutes = new(new(120, 75), new(60, 45), new(180, 150));
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);
    private static readonly PopulationParameters Population = PopulationParameters.FromPriors(Window) with
    {
        PracticeVariance = 0.001,
        Count = 5000,
    };

    public static async Task RunAsync(Report report)
    {
        var dice = new Random(52);
        var book = Enumerable.Range(0, 100_000).Select(_ => Draw(dice)).ToArray();
        SalonLoad[] salons = [];
        int[] sizes = [25_000, 50_000, 100_000];
        Func<Task>[] ways =
        [
            .. sizes.Select<int, Func<Task>>(size =>
                () =>
                {
                    salons = Sum(book.AsMemory(0, size));
                    return Task.CompletedTask;
                }
            ),
        ];
        var (wall, processor) = (await Rounds.TimeAsync(5, ways), await Rounds.ComputeAsync(3, ways));
        for (var i = 0; i < sizes.Length; i++)
        {
            var each = 1000 * Rounds.Median(processor[i]) / sizes[i];
            report.Say(
                $"{sizes[i], 7:N0} clients x {Weeks} weeks: {Rounds.Median(wall[i]):F0} ms by the wall clock on {Threads} threads (quickest {wall[i].Min():F0}), "
                    + $"{Rounds.Median(processor[i]):F0} ms of processor time, {each:F1} us a client"
            );
        }
        report.Say(
            $"check: week 10 of the first salon {salons[0].Week(10).ChairMinutes:F6} chair-minutes, +- {Math.Sqrt(salons[0].Week(10).ChairVariance):F6}"
        );
    }

    private static SalonLoad[] Sum(ReadOnlyMemory<ClientLoadInput> book)
    {
        var total = Empty();
        Parallel.For(
            0,
            book.Length,
            new ParallelOptions { MaxDegreeOfParallelism = Threads },
            () => (Load: new ClientLoadCalculator(Weeks), Salons: Empty()),
            (i, _, mine) =>
            {
                mine.Load.AddTo(mine.Salons[i % Salons], book.Span[i], Minutes);
                return mine;
            },
            mine =>
            {
                lock (total)
                {
                    for (var salon = 0; salon < Salons; salon++)
                        total[salon].Add(mine.Salons[salon]);
                }
            }
        );
        return total;
    }

    private static SalonLoad[] Empty() => [.. Enumerable.Range(0, Salons).Select(_ => new SalonLoad(Weeks))];

    private static ClientLoadInput Draw(Random dice)
    {
        var own = Enumerable
            .Range(0, dice.Next(7))
            .Select(_ => dice.Next(3) == 0 ? Spell.Exact(20 + 30 * dice.NextDouble()) : Spell.RightCensored(35))
            .ToArray();
        return new ClientLoadInput(scenario => Hold(own, scenario), dice.Next(28, 46))
        {
            BondAgeDays = dice.Next(30),
            CurrentTargetDays = dice.Next(28, 46),
            WashEveryDays = dice.Next(2) == 0 ? 14 : null,
            NextWashInDays = dice.Next(14),
        };
    }

    private static LifePrediction Hold(Spell[] own, PracticeEffectNode scenario)
    {
        var given = Population with { PracticeMean = scenario.Shift * Math.Sqrt(Population.PracticeVariance), PracticeVariance = 0 };
        var places = new RowLocationScale[own.Length];
        Array.Fill(places, Window.Place);
        return new LifePrediction(
            given,
            ClientEffectNodes.For(given, LifetimeFitRows.Create(own, [], places, new int[own.Length])),
            Window.Place
        );
    }
}
