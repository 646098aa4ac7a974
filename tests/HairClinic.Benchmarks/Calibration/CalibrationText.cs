namespace HairClinic.Benchmarks.Calibration;

/// <summary>What a reader is told: how it was simulated, and the tables.</summary>
internal static class CalibrationText
{
    public static void SayModel(Report report, int practices, int seed)
    {
        report.Say($"{practices} simulated practices, seed {seed}. Each has truths of its own, drawn from the model's priors:");
        report.Say(
            "  delta N(0, its prior), s N(0, 0.4), beta N(ln factor or 0, 0.35), each client's b N(0, its prior), apart for holds and lives;"
        );
        report.Say(
            "  two workshops, ln lead N(mu, v): v = 4/5 of the row's squared scale * 4 / chi2(4), mu N(ln P50, v / 4); remake rate Beta(1, 19)."
        );
        report.Say("Its book: 60-200 clients.");
        report.Say(
            "  Bonds (windows 28-56 and 21-35 days; skin, adhesive, waits): nine clients of ten have 1-6 earlier ones and one on the head,"
        );
        report.Say(
            "  rebonded by a rhythm of 60-90 % of the window's end +- 3 days; 5 % taken off early for another reason; of lifts before that"
        );
        report.Say(
            "  55 % are told to the day, the others lie between contacts 4-14 days apart or are found at the take-down. Whole days."
        );
        report.Say(
            "  Units (windows 182-273 and 240-365 worn days; workshop, bleach, heat): 0-4 earlier ones, a quarter of them lost or put aside,"
        );
        report.Say(
            "  inspected every 28-45 worn days; one in wear of up to 170 worn days; 35 % have a spare (up to 40), one in ten waits for one."
        );
        report.Say(
            "  Orders: rows 56/77 and 42/70 days, 0-25 arrived, some under way; one workshop closes for two weeks; preparation 14 days."
        );
        report.Say(
            "Fitted practice by practice (Weibull, the engine's priors). Then drawn: each client's next bond, the rest of the unit in wear,"
        );
        report.Say(
            "and for every client whose order could still wait, the true lead of an order placed on the engine's last day (P(gap) <= 5 %)."
        );
        report.Say(
            "Naive, same clients: average days of spells that are over, whatever ended them (own from three on, else the practice's for the"
        );
        report.Say("window), band +- 1.28 standard deviations; order when the averages leave just the mean lead and the preparation.");
        report.Say("+- is one standard error over practices (clients of a practice share its truths).");
    }

    public static void SayTable(Report report, string title, Tally[] practices, bool asModelled)
    {
        report.Say();
        report.Say(title);
        report.Say($"{"", -42}{"clients", 8}   {"engine", -16}{"(too short)", -14}{"naive", -16}(too short)");
        Bands(report, practices, asModelled, "hold", "next bond's hold within the 80 % band");
        Bands(report, practices, asModelled, "life", "unit's remaining life within the 80 % band");
        var past = Tally.Sum(practices, "past");
        report.Say(
            $"reorder: {past.Share * past.Trials:F0} of {past.Trials} clients were past their day already and are not counted below"
        );
        foreach (var history in CalibrationBenchmark.Histories.Prepend(""))
        {
            var key = history.Length > 0 ? $", {history}" : "";
            var (engine, naive) = (Tally.Sum(practices, $"gap{key}"), Tally.Sum(practices, $"naive gap{key}"));
            var label = history.Length > 0 ? $"  {history}" : "without hair, ordered on the last day";
            report.Say($"{label, -42}{engine.Trials, 8}   {Told(engine), -30}{Told(naive)}");
        }
    }

    private static void Bands(Report report, Tally[] practices, bool asModelled, string line, string label)
    {
        foreach (var history in CalibrationBenchmark.Histories.Prepend(""))
        {
            var key = history.Length > 0 ? $", {history}" : "";
            string Column(string who) =>
                $"{Told(Tally.Sum(practices, who + line + key)), -16}{100 * Tally.Sum(practices, $"{who}{line} short{key}").Share, 5:F1} %       ";
            var trials = Tally.Sum(practices, line + key).Trials;
            report.Say($"{(history.Length > 0 ? $"  {history}" : label), -42}{trials, 8}   {Column("")}{Column("naive ").TrimEnd()}");
        }
        if (asModelled)
            report.Say($"{"  all, were delta, s and beta known", -53}{Told(Tally.Sum(practices, $"knowing {line}"))}");
    }

    private static string Told((double Share, double Error, int Trials) sum) => $"{100 * sum.Share:F2} +- {100 * sum.Error:F2} %";
}
