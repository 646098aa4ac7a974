using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What a reader is told.</summary>
internal static class WorldsText
{
    private const string Model = """
        Each practice has truths of its own: delta N(0, its prior), s N(0, 0.2), beta N(ln factor or 0, 0.1) (in wide 0.4 and 0.35), each client's b N(0, its prior),
        apart for holds and lives; two workshops with rows 56/77 and 42/70 days (65 and 35 % of clients), ln lead N(mu, v) as the row stands
        for four orders, 5 % remade; preparation 14 days. Bases: lace (life 182-273 worn days, hold 28-56) and thin (45-75, hold 7-14; 15 % of
        clients, who began with two spares). Clients came within a third of a life before day 0, 1 March. Open Monday to Saturday.
        Day by day: a lift brings the client in within three days if they know its day (55 %), else it is seen at the next contact (4-14 days
        apart) or at the take-down; a unit is looked at when it is taken down and retired if it is worn out; spares wait until then.
        Grades, honest: 20 % of take-downs none; of the rest 30 % a copy of the last entry or off by one; who retires writes 3, 4 or nothing.
        Advice: planned every 7 days and after each event; ordered on the last day; rebonded on the due day. Lives are fitted and workshops
        watched every 7 days where one declines, every 14 in the control, else every 28; holds fitted every 28; bonds watched (control, summer,
        lot, all) every 56; grades learnt every 112. Nobody closes an alarm. What is asked about dates is answered after three days, truthfully.
        Others: one order once what is worn has lasted a share of its usual life, or is found worn out, unless there is a spare or an order under
        way; rebonded every 35 days (thin: 8).
        gap: of units that were worn out, those on whose last day nothing else was ready; found bare: of units found worn out at a take-down,
        those after which nothing was ready. without: days on which every unit in house was worn out; bare: days with nothing on the head;
        both a client-year. idle: units ready and not worn, a client; early: bonds that lifted before they were taken down.
        +- is one standard error over practices. Draws are the same whatever is advised.
        """;

    public static void SaySetup(Report report, Setup setup)
    {
        report.Say(
            $"{setup.Practices} practices x {setup.Clients} clients x {setup.Years} years, seed {setup.Seed}, grades {setup.Grades}, spares always ready: lace {setup.Spares.Lace}, thin {setup.Spares.Thin}."
        );
        report.Say(Model);
    }

    public static void SayWorld(Report report, World world, Setup setup, IReadOnlyList<(Policy Policy, PracticeDays[] Practices)> runs)
    {
        report.Say();
        report.Say($"{world.Name}: {world.Told}");
        report.Say(
            $"{"", -14}{"gap %", -15}{"year 1", -15}{"year 2", -15}{$"from day {Measures.FirstSpares}", -15}{"lace", -15}{"thin", -15}{"found bare", -15}{"without d/y", -15}{"bare d/y", -15}{"idle", -15}{"on order", -15}{"early %", -15}rebonds/cl.y"
        );
        foreach (var (policy, practices) in runs)
            report.Say($"{policy.Name, -14}{Line([.. practices.Select(p => p.Measures.Tally)])}");
        var advised = runs[0].Practices;
        SayBands(report, [.. advised.Select(p => p.Measures.Tally)], setup.Years);
        SayChances(report, [.. advised.Select(p => p.Measures.Tally)], setup.Years);
        SayAlarms(report, advised, world, setup);
        SayWarnings(report, advised, world);
        report.Say(
            $"gaps / worn-out units by practice: {string.Join(' ', advised.Select(p => p.Measures.Tally.Of("gap")).Select(g => $"{g.Hits}/{g.Trials}"))}"
        );
        if (advised.Sum(p => p.Advice.Unsettled) is var unsettled and > 0)
            report.Say($"fits that did not settle: {unsettled}");
    }

    private static string Line(Tally[] tallies)
    {
        var shares = new[] { "gap", "gap 1", "gap 2", "gap settled", "gap lace", "gap thin", "found" }.Select(line =>
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

    private static void SayChances(Report report, Tally[] tallies, int years)
    {
        report.Say("P(gap) of orders not placed, said -> came %, and the difference in standard errors over practices; then year by year");
        var from = 0.0;
        for (var bin = 0; bin < Measures.Bins.Length; bin++)
        {
            var all = Chance(tallies, $"{bin}", out var trials);
            var yearly = Enumerable.Range(1, years).Select(year => Chance(tallies, $"{bin} in {year}", out _));
            report.Say($"  {$"{100 * from:0.#}-{100 * Measures.Bins[bin]:0.#}", -9}{all}  n {trials, -8}{string.Join("  |", yearly)}");
            from = Measures.Bins[bin];
        }
    }

    private static string Chance(Tally[] tallies, string line, out int trials)
    {
        var (said, came, difference) = (
            Tally.Sum(tallies, $"said {line}"),
            Tally.Sum(tallies, $"came {line}"),
            Tally.Sum(tallies, $"came less said {line}")
        );
        trials = said.Trials;
        var errors = difference.Error > 0 ? difference.Share / difference.Error : 0;
        return $"{100 * said.Share, 5:F1} -> {Percent(came), -13}{errors, 5:+0.0;-0.0;0.0}";
    }

    private static void SayAlarms(Report report, PracticeDays[] practices, World world, Setup setup)
    {
        var wrong = practices.Sum(p => p.Advice.Alarms.Count(a => a.Kind == WatchedStreamKind.Workshop && !IsTrue(a, world)));
        var bonds = practices.SelectMany(p => p.Advice.Alarms).Where(a => a.Kind != WatchedStreamKind.Workshop).ToList();
        var years = (double)practices.Length * setup.Years;
        var wrongly =
            $"{wrong / years:F2} false ones a practice-year; of adhesives and lots {bonds.Count(a => !IsTrue(a, world)) / years:F2} false ones, {bonds.Count(a => IsTrue(a, world))} true ones";
        if (world.Decline is not { } decline)
        {
            report.Say($"alarms: {wrongly}");
            return;
        }
        var named = practices
            .Select(p =>
                (
                    p.Measures.GapsOfDecline,
                    First: p.Advice.Alarms.Where(a => a.Kind == WatchedStreamKind.Workshop && IsTrue(a, world))
                        .Select(a => (int?)a.Day)
                        .Min()
                )
            )
            .ToList();
        // Those that were never named count as later than all others.
        var days = named.Select(n => n.First is { } day ? day - decline.FromDay : double.PositiveInfinity).ToList();
        var (after, all) = (named.Sum(n => n.GapsOfDecline.Count(day => day > n.First)), named.Sum(n => n.GapsOfDecline.Count));
        report.Say(
            $"alarms: in {days.Count(double.IsFinite)} of {practices.Length} practices, after a median of {Rounds.Median(days):F0} days; {after} of {all} gaps of its units come after it; {wrongly}"
        );
    }

    private static void SayWarnings(Report report, PracticeDays[] practices, World world)
    {
        Tally[] tallies = [.. practices.Select(p => p.Measures.Tally)];
        if (world.CountsWarnings)
            SayWarned(report, tallies, practices);
        var asked = practices.SelectMany(p => p.Advice.Asked).CountBy(check => check.Kind).OrderBy(k => k.Key);
        report.Say(
            $"asked about, a practice: {string.Join(", ", asked.Select(k => $"{k.Key} {(double)k.Value / practices.Length:F1}"))}; preparation learnt in {practices.Count(p => p.Advice.Preparation.IsLearnt)} of them"
        );
    }

    private static void SayWarned(Report report, Tally[] tallies, PracticeDays[] practices)
    {
        var (gap, none) = (Tally.Sum(tallies, "warned of gap"), Tally.Sum(tallies, "warned falsely"));
        report.Say(
            $"wears faster than its age, said before the end: of units that left nobody else ready {Percent(gap)} %, of the others {Percent(none)} %; grades count at the end in {practices.Count(p => p.Advice.GradesTell)} of {practices.Length} practices"
        );
    }

    private static bool IsTrue(Alarm alarm, World world) =>
        alarm.Kind switch
        {
            WatchedStreamKind.Workshop => world.Decline is { } decline && alarm.Number == decline.Workshop && alarm.Day >= decline.FromDay,
            WatchedStreamKind.Lot => world.Lot is not null && alarm.Number == BondRecord.LotOf(BadLot.FirstDay),
            _ => false,
        };

    private static string Percent((double Share, double Error, int Trials) sum) => $"{100 * sum.Share:F1} +- {100 * sum.Error:F1}";

    private static string Number((double Share, double Error, int Trials) sum) => $"{sum.Share:F2} +- {sum.Error:F2}";
}
