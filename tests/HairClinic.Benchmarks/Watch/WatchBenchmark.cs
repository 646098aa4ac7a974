namespace HairClinic.Benchmarks.Watch;

/// <summary>How soon a workshop that gets worse is named, and how often one that does not: practices simulated for two years.</summary>
public static class WatchBenchmark
{
    public static Task RunAsync(Report report)
    {
        var (practices, seed) = (report.Option("practices", 60), report.Option("seed", 2026));
        report.Say(
            $"{practices} practices a world (a third of them of 200 clients), two years, seed {seed}; two workshops with 65 and 35 % of the clients, "
                + "15 % thin bases (45-75 days) among lace (182-273); looked at weekly, ends between take-downs alone, no grades."
        );
        report.Say("Truth: β sd 0.1, s sd 0.2 unless said. A decline: units delivered from day 240 on last 25 % shorter.");
        var third = Math.Max(1, practices / 3);
        Say(report, new WatchWorld("60 clients, nothing changes", 60, 0.15, null), practices, seed, alsoBare: true);
        Say(report, new WatchWorld("200 clients, nothing changes", 200, 0.15, null), third, seed, alsoBare: false);
        Say(report, new WatchWorld("60 clients, first workshop declines", 60, 0.15, 240), practices, seed, alsoBare: true);
        Say(report, new WatchWorld("200 clients, first workshop declines", 200, 0.15, 240), third, seed, alsoBare: false);
        Say(report, new WatchWorld("60 clients, second workshop declines", 60, 0.15, 240) { Declines = 1 }, third, seed, alsoBare: false);
        Say(
            report,
            new WatchWorld("60 clients, nothing changes; β sd 0.35, s sd 0.4", 60, 0.15, null)
            {
                CoefficientSpread = 0.35,
                LogScaleSpread = 0.4,
            },
            practices,
            seed,
            alsoBare: false
        );
        Say(
            report,
            new WatchWorld("60 clients, nothing changes; 15 % duds", 60, 0.15, null) { Duds = 0.15 },
            practices,
            seed,
            alsoBare: false
        );
        Say(report, new WatchWorld("60 clients, nothing changes; no thin bases", 60, 0, null), third, seed, alsoBare: false);
        Say(report, new WatchWorld("60 clients, first workshop declines; no thin bases", 60, 0, 240), third, seed, alsoBare: false);
        Bonds(report);
        return Task.CompletedTask;
    }

    internal static void Bonds(Report report)
    {
        var (practices, seed) = (Math.Max(1, report.Option("practices", 60) / 3), report.Option("seed", 2026));
        report.Say();
        report.Say(
            "Bonds: window 28-56 days, two adhesives with 70 and 30 % of the clients, a lot each in use for 120 days; adhesives and lots are watched."
        );
        SayBonds(report, new WatchWorld("60 clients, nothing changes", 60, 0, null), practices, seed);
        SayBonds(
            report,
            new WatchWorld("60 clients, the lot of the first adhesive from day 240 holds 25 % shorter", 60, 0, 240),
            practices,
            seed
        );
    }

    private static void SayBonds(Report report, WatchWorld world, int practices, int seed)
    {
        var stories = new BondWatchStory[practices];
        Parallel.For(
            0,
            practices,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            p => stories[p] = new BondWatchStory(world, unchecked(seed * 1_000_003 + p))
        );
        var wrong = stories.Sum(s => s.Track.FalseAlarms);
        var line =
            $"{world.Name}: {practices} practices, {stories.Average(s => s.BondsPerYear):F0} bonds a year; "
            + $"{10.0 * wrong / (2 * practices):F2} false alarms in ten practice-years ({wrong})";
        if (world.DeclineFrom is { } from)
        {
            var days = stories.Select(s => s.Track.NamedOn - from ?? int.MaxValue).Order().ToList();
            line +=
                $"; named after {days[days.Count / 4]}, {days[days.Count / 2]}, {days[3 * days.Count / 4]} days (quartiles), "
                + $"never {days.Count(d => d == int.MaxValue)}";
        }
        report.Say(line);
    }

    private static void Say(Report report, WatchWorld world, int practices, int seed, bool alsoBare)
    {
        var stories = new WatchStory[practices];
        Parallel.For(
            0,
            practices,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            p => stories[p] = new WatchStory(world, unchecked(seed * 1_000_003 + p), alsoBare)
        );
        var later = stories.SelectMany(s => s.Units).Where(u => u.EndedOn >= 240).ToList();
        report.Say();
        report.Say(
            $"{world.Name}: {practices} practices, {stories.Average(s => s.Units.Count(u => u.DeliveredOn > 0)) / 2:F0} units a year, "
                + $"{100.0 * later.Count(u => u.LeftGap) / later.Count:F1} % gaps from day 240, {stories.Sum(s => s.Unsettled)} weeks without a fit"
        );
        SayWay(report, "limit by the number of units", world, stories, s => s.AsBuilt);
        SayWay(report, "4.9 for all", world, stories, s => s.OneLimit);
        if (alsoBare)
            SayWay(report, "4.9, each unit by itself", world, stories, s => s.Bare);
    }

    private static void SayWay(Report report, string way, WatchWorld world, WatchStory[] stories, Func<WatchStory, WatchTrack> track)
    {
        var wrong = stories.Sum(s => track(s).FalseAlarms);
        var line = $"  {way, -29} {10.0 * wrong / (2 * stories.Length):F2} false alarms in ten practice-years ({wrong})";
        if (world.DeclineFrom is { } from)
        {
            var days = stories.Select(s => track(s).NamedOn - from ?? int.MaxValue).Order().ToList();
            var gaps = stories
                .SelectMany(s => s.Units.Where(u => u.IsOfDecline && u.LeftGap).Select(u => u.EndedOn > track(s).NamedOn))
                .ToList();
            line +=
                $"; named after {days[days.Count / 4]}, {days[days.Count / 2]}, {days[3 * days.Count / 4]} days (quartiles), "
                + $"never {days.Count(d => d == int.MaxValue)}; {100.0 * gaps.Count(after => after) / gaps.Count:F0} % of {gaps.Count} gaps after it";
        }
        report.Say(line);
    }
}
