namespace HairClinic.Benchmarks.Calibration;

/// <summary>
/// What a list of averages would say: every spell that is over counts as ended when it was last seen. A client's own average from
/// three such spells on, else that of the practice's clients with the same window; a band of 1.28 standard deviations.
/// </summary>
internal sealed class NaiveRule(List<Seen> seen)
{
    private readonly ILookup<int, double> _own = seen.Where(row => row.IsOver).ToLookup(row => row.Client, row => row.Days);
    private readonly ILookup<Window, double> _all = seen.Where(row => row.IsOver).ToLookup(row => row.Window, row => row.Days);

    public double Average(int client, Window window) => Days(client, window).DefaultIfEmpty((window.Low + window.High) / 2).Average();

    public (double From, double To) Band(int client, Window window)
    {
        var (days, mean) = (Days(client, window), Average(client, window));
        var variance =
            days.Count > 1 ? days.Sum(d => (d - mean) * (d - mean)) / (days.Count - 1) : Math.Pow((window.High - window.Low) / 2.56, 2);
        var reach = 1.2816 * Math.Sqrt(variance);
        return (mean - reach, mean + reach);
    }

    private List<double> Days(int client, Window window) => _own[client].Count() >= 3 ? [.. _own[client]] : [.. _all[window]];
}
