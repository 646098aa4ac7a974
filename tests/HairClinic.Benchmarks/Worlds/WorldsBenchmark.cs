using System.Diagnostics;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>Does the promise hold where the world is not the model? Practices simulated day by day, the program's advice taken.</summary>
public static class WorldsBenchmark
{
    public static Task RunAsync(Report report)
    {
        var setup = new Setup(
            report.Option("practices", 20),
            report.Option("clients", 60),
            report.Option("seed", 2026),
            report.Option("years", 2),
            report.Option("threads", 2),
            Enum.Parse<GradeMode>(report.Word("grades") ?? nameof(GradeMode.Honest), ignoreCase: true),
            new Spares(report.Option("spare-lace", 0), report.Option("spare-thin", 0))
        );
        var named = report.Word("world") is { } names ? names.Split(',') : null;
        // What does without the program is the same whatever it says.
        var others = report.Option("others", 1) > 0 ? Policy.Others : [];
        WorldsText.SaySetup(report, setup);
        foreach (var world in World.All.Where(world => named?.Contains(world.Name) ?? true))
        {
            var start = Stopwatch.GetTimestamp();
            var advised = Play(setup, world, Policy.Advised);
            WorldsText.SayWorld(report, world, setup, [(Policy.Advised, advised), .. others.Select(p => (p, Play(setup, world, p)))]);
            Console.WriteLine($"({Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s)");
        }
        return Task.CompletedTask;
    }

    private static PracticeDays[] Play(Setup setup, World world, Policy policy)
    {
        var practices = new PracticeDays[setup.Practices];
        Parallel.For(
            0,
            practices.Length,
            new ParallelOptions { MaxDegreeOfParallelism = setup.Threads },
            p => practices[p] = new PracticeDays(setup, world, policy, p).Play()
        );
        return practices;
    }
}
