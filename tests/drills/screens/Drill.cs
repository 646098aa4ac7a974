namespace HairClinic.ScreenDrill;

internal static class Drill
{
    private static async Task<int> Main(string[] args)
    {
        var report = new Report(args.FirstOrDefault() ?? "");
        var passed = args.FirstOrDefault() switch
        {
            "slow-line" => await SlowLine.RunAsync(report, Chosen("--roles", "owner,desk,stylist,trainee").Split(',')),
            "outage" => await Outage.RunAsync(report, [.. Chosen("--seconds", "6,30").Split(',').Select(int.Parse)]),
            _ => (bool?)null,
        };
        if (passed is not { } held)
        {
            Console.WriteLine("slow-line [--roles owner,desk] | outage [--seconds 6,30], with --save to keep what it says");
            return 2;
        }
        report.Say(held ? "PASS" : "FAIL");
        if (args.Contains("--save"))
            report.Save();
        return held ? 0 : 1;

        string Chosen(string name, string usual) => Array.IndexOf(args, name) is var at and >= 0 ? args[at + 1] : usual;
    }
}
