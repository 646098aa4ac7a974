using HairClinic.Benchmarks;
using HairClinic.Benchmarks.Calibration;
using HairClinic.Benchmarks.DueQuery;
using HairClinic.Benchmarks.DueWindows;
using HairClinic.Benchmarks.Grades;
using HairClinic.Benchmarks.Lifetimes;
using HairClinic.Benchmarks.LoadAhead;
using HairClinic.Benchmarks.Nightly;
using HairClinic.Benchmarks.OwnPage;
using HairClinic.Benchmarks.Pages;
using HairClinic.Benchmarks.Reorder;
using HairClinic.Benchmarks.SignIn;
using HairClinic.Benchmarks.Watch;
using HairClinic.Benchmarks.Worlds;

Dictionary<string, Func<Report, Task>> benchmarks = new()
{
    ["due-windows"] = DueWindowsBenchmark.RunAsync,
    ["due-query"] = DueQueryBenchmark.RunAsync,
    ["pages"] = PagesBenchmark.RunAsync,
    ["own-page"] = OwnPageBenchmark.RunAsync,
    ["own-page-load"] = OwnPageLoad.RunAsync,
    ["sign-in"] = SignInBenchmark.RunAsync,
    ["lifetime-fit"] = FitBenchmark.RunAsync,
    ["lifetime-scale"] = ScaleBenchmark.RunAsync,
    ["grades"] = GradesBenchmark.RunAsync,
    ["reorder"] = ReorderBenchmark.RunAsync,
    ["load-ahead"] = LoadAheadBenchmark.RunAsync,
    ["calibration"] = CalibrationBenchmark.RunAsync,
    ["worlds"] = WorldsBenchmark.RunAsync,
    ["watch"] = WatchBenchmark.RunAsync,
    ["nightly"] = NightlyBenchmark.RunAsync,
};

// Options follow the name: --save, and numbers a benchmark asks for.
if (args is not [var name, .. var options] || (name != "all" && !benchmarks.ContainsKey(name)))
{
    Console.Error.WriteLine(
        $"Name a benchmark: {string.Join(", ", benchmarks.Keys)} or all. With --save the results are kept in {Report.Folder}."
    );
    return 2;
}
foreach (var (key, run) in benchmarks.Where(b => name == "all" || b.Key == name))
{
    var report = new Report(key, options);
    report.SayLoad();
    try
    {
        await run(report);
    }
    catch (NeedException e)
    {
        Console.Error.WriteLine($"{key}: {e.Message}");
        return 2;
    }
    report.SayLoad();
    if (options.Contains("--save"))
        report.Save();
}
return 0;
