namespace HairClinic.Benchmarks.Calibration;

/// <summary>Hits and trials of one practice, by what is asked.</summary>
internal sealed class Tally
{
    /// <summary>By what is known of the client's own.</summary>
    public static readonly string[] Histories = ["0 own spells", "1-2 own spells", "3+ own spells"];

    private readonly Dictionary<string, (double Hits, double Trials)> _counts = [];

    public void Count(string line, bool hit) => Add(line, hit ? 1 : 0);

    /// <summary>A quantity and what it is counted over: a day without hair, say, over the part of a year that a day is.</summary>
    public void Add(string line, double value, double over = 1)
    {
        var (hits, trials) = _counts.GetValueOrDefault(line);
        _counts[line] = (hits + value, trials + over);
    }

    public (double Hits, double Trials) Of(string line) => _counts.GetValueOrDefault(line);

    /// <summary>A share over practices, and its standard error: clients of one practice share its truths, so practices are what is counted.</summary>
    public static (double Share, double Error, int Trials) Sum(IReadOnlyList<Tally> practices, string line)
    {
        var all = practices.Select(practice => practice.Of(line)).ToList();
        var (hits, trials) = (all.Sum(c => c.Hits), all.Sum(c => c.Trials));
        var share = hits / Math.Max(1, trials);
        var squares = all.Sum(c => Math.Pow(c.Hits - share * c.Trials, 2)) * all.Count / Math.Max(1, all.Count - 1.0);
        return (share, Math.Sqrt(squares) / Math.Max(1, trials), (int)Math.Round(trials));
    }
}
