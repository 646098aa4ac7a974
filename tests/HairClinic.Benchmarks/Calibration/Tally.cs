namespace HairClinic.Benchmarks.Calibration;

/// <summary>Hits and trials of one practice, by what is asked.</summary>
internal sealed class Tally
{
    /// <summary>By what is known of the client's own.</summary>
    public static readonly string[] Histories = ["0 own spells", "1-2 own spells", "3+ own spells"];

    private readonly Dictionary<string, (int Hits, int Trials)> _counts = [];

    public void Count(string line, bool hit)
    {
        var (hits, trials) = _counts.GetValueOrDefault(line);
        _counts[line] = (hits + (hit ? 1 : 0), trials + 1);
    }

    public (int Hits, int Trials) Of(string line) => _counts.GetValueOrDefault(line);

    /// <summary>A share over practices, and its standard error: clients of one practice share its truths, so practices are what is counted.</summary>
    public static (double Share, double Error, int Trials) Sum(IReadOnlyList<Tally> practices, string line)
    {
        var all = practices.Select(practice => practice.Of(line)).ToList();
        var (hits, trials) = (all.Sum(c => c.Hits), all.Sum(c => c.Trials));
        var share = (double)hits / Math.Max(1, trials);
        var squares = all.Sum(c => Math.Pow(c.Hits - share * c.Trials, 2)) * all.Count / Math.Max(1, all.Count - 1.0);
        return (share, Math.Sqrt(squares) / Math.Max(1, trials), trials);
    }
}
