using HairClinic.Benchmarks.Calibration;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What a reader is told.</summary>
internal static class WorldsText
{
    public static void SaySetup(Report report, Setup setup)
    {
        report.Say(
            $"{setup.Practices} practices x {setup.Clients} clients x {setup.Years} years, seed {setup.Seed}, grades {setup.Grades}, spares always ready: lace {setup.Spares.Lace}, thin {setup.Spares.Thin}."
        );
    }

    public static void SayWorld(Report report, World world, Setup setup, IReadOnlyList<(Policy Policy, PracticeDays[] Practices)> runs)
    {
        report.Say();
        report.Say($"{world.Name}: {world.Told}");
        report.Say(
            $"{"", -14}{"gap %", -15}{"year 1", -15}{"year 2", -15}{"lace", -15}{"thin", -15}{"found bare", -15}{"without d/y", -15}{"bare d/y", -15}{"idle", -15}{"on order", -15}{"early %", -15}rebonds/cl.y"
        );
        foreach (var (policy, practices) in runs)
            report.Say($"{policy.Name, -14}{Line([.. practices.Select(p => p.Measures.Tally)])}");
        var advised = runs[0].Practices;
        SayBands(report, [.. advised.Select(p => p.Measures.Tally)], setup.Years);
        SayChances(report, [.. advised.Select(p => p.Measures.Tally)]);
        if (world.Decline is { } decline)
            SayAlarms(report, advised, decline, setup);
        if (advised.Sum(p => p.Advice.Unsettled) is var unsettled and > 0)
            report.Say($"fits that did not settle: {unsettled}");
    }

    private static string Line(Tally[] tallies)
    {
        var shares = new[] { "gap", "gap 1", "gap 2", "gap lace", "gap thin", "found" }.Select(line =>
            $"{Percent(Tally.Sum(tallies, line)), -15}"
        );
        var counts = new[] { "without", "bare", "idle", "on order" }.Select(line => $"{Number(Tally.Sum(tallies, line)), -15}");
        return string.Concat(shares.Concat(counts)) + $"{Percent(Tally.Sum(tallies, "early")), -15}{Number(Tally.Sum(tallies, "rebonds"))}";
    }

    private static void SayBands(Report report, Tally[] tallies, int years)
    {
        report.Say("80 % bands: inside (below, above) %, loss in % of the usual time");
        foreach (var kind in Measures.Bands)
        {
            var cells = Enumerable.Range(1, years).Select(year => Band(tallies, $"{kind} {year}"));
            report.Say($"  {kind, -12}{string.Concat(cells.Select((cell, i) => $"year {i + 1}: {cell, -46}")).TrimEnd()}");
        }
    }

    private static string Band(Tally[] tallies, string line)
    {
        var inside = Tally.Sum(tallies, $"{line} inside");
        var (below, above) = (Tally.Sum(tallies, $"{line} below").Share, Tally.Sum(tallies, $"{line} above").Share);
        return $"{Percent(inside)} ({100 * below:F1}, {100 * above:F1})  loss {100 * Tally.Sum(tallies, $"{line} loss").Share:F2}  n {inside.Trials}";
    }

    private static void SayChances(Report report, Tally[] tallies)
    {
        report.Say("P(gap) of orders not placed, said -> came %, and the difference in standard errors over practices");
        var from = 0.0;
        for (var bin = 0; bin < Measures.Bins.Length; bin++)
        {
            var (said, came, difference) = (
                Tally.Sum(tallies, $"said {bin}"),
                Tally.Sum(tallies, $"came {bin}"),
                Tally.Sum(tallies, $"came less said {bin}")
            );
            var errors = difference.Error > 0 ? difference.Share / difference.Error : 0;
            report.Say(
                $"  {$"{100 * from:0.#}-{100 * Measures.Bins[bin]:0.#}", -9}{100 * said.Share, 5:F1} -> {Percent(came), -15}{errors, 6:+0.0;-0.0;0.0}  n {said.Trials}"
            );
            from = Measures.Bins[bin];
        }
    }

    private static void SayAlarms(Report report, PracticeDays[] practices, Decline decline, Setup setup)
    {
        var named = practices
            .Select(p => (p.Measures.GapsOfDecline, First: p.Advice.Alarms.Where(a => IsTrue(a, decline)).Select(a => (int?)a.Day).Min()))
            .ToList();
        var days = named.Select(n => n.First).OfType<int>().Select(day => (double)(day - decline.FromDay)).ToList();
        var (after, all) = (named.Sum(n => n.GapsOfDecline.Count(day => day > n.First)), named.Sum(n => n.GapsOfDecline.Count));
        var wrong = practices.Sum(p => p.Advice.Alarms.Count(a => !IsTrue(a, decline)));
        report.Say(
            $"alarms: {days.Count} of {practices.Length} practices, after a median of {(days.Count > 0 ? Rounds.Median(days) : double.NaN):F0} days; "
                + $"{after} of {all} gaps of its units come after it; {(double)wrong / practices.Length / setup.Years:F2} false ones a practice-year"
        );
    }

    private static bool IsTrue(Alarm alarm, Decline decline) => alarm.Workshop == decline.Workshop && alarm.Day >= decline.FromDay;

    private static string Percent((double Share, double Error, int Trials) sum) => $"{100 * sum.Share:F1} +- {100 * sum.Error:F1}";

    private static string Number((double Share, double Error, int Trials) sum) => $"{sum.Share:F2} +- {sum.Error:F2}";
}
