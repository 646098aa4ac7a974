namespace HairClinic.Domain.Replay;

/// <summary>How often what came lay inside the band of four in five that was said beforehand.</summary>
/// <remarks>
/// What has not ended, or was taken down sound, is not left out and not guessed: it counts as going on until then, and from there on in
/// the shares of those that were still going on as far along their own bands (the self-consistent estimate for interval-censored times:
/// Efron 1967, Turnbull 1976; from memory), here over the predicted chance to have ended, in steps of half a percent. Standard errors
/// leave out a twentieth of the clients at a time, because the bonds of one client are not independent.
/// </remarks>
public sealed record BandShare
{
    /// <summary>Fewer ends tell nothing yet. Common practice, no source.</summary>
    public const int FewestToTell = 10;

    private const int Cells = 200;
    private const int Groups = 20;
    private const int MostSteps = 5000;
    private const double Settled = 1e-9;

    /// <summary>Predicted.</summary>
    public int Count { get; init; }

    /// <summary>Of which an end is known.</summary>
    public int Ended { get; init; }

    /// <summary>Whose end is known to lie before, inside and after the band.</summary>
    public int Before { get; init; }

    public int Inside { get; init; }

    /// <summary>Those too that go on past the band's end.</summary>
    public int After { get; init; }

    /// <summary>The others: nobody can say where they end.</summary>
    public int NotKnown => Count - Before - Inside - After;

    public double ShareBefore { get; init; }

    public double ShareInside { get; init; }

    public double ShareAfter => Math.Max(0, 1 - ShareBefore - ShareInside);

    public double ErrorOfBefore { get; init; }

    public double ErrorOfInside { get; init; }

    /// <summary>Of those that went past the middle of what was said, how many were followed to their end or past the band's.</summary>
    public int FollowedPastMiddle { get; init; }

    public bool CanTell => Ended >= FewestToTell;

    /// <summary>
    /// Whether enough were followed to say how many end after the band: ten past its middle, or three in four of all. Where nearly all are
    /// taken down before, nobody can. Common practice, no source.
    /// </summary>
    public bool CanTellUpperEnd => CanTell && (FollowedPastMiddle >= FewestToTell || Count - NotKnown >= 3 * NotKnown);

    public static BandShare Estimate(IReadOnlyCollection<BandOutcome> all)
    {
        var places = all.CountBy(o => o.Place).ToDictionary();
        var share = new BandShare
        {
            Count = all.Count,
            Ended = all.Count(o => !o.IsOpen),
            Before = places.GetValueOrDefault(BandPlace.Before),
            Inside = places.GetValueOrDefault(BandPlace.Inside),
            After = places.GetValueOrDefault(BandPlace.After),
            FollowedPastMiddle = all.Count(o => (o.Lower >= 0.5 && !o.IsOpen) || o.Lower >= BandOutcome.To),
        };
        if (share.Ended == 0)
            return share;
        var (before, inside) = Shares(all);
        var (errorBefore, errorInside) = Errors(all);
        return share with { ShareBefore = before, ShareInside = inside, ErrorOfBefore = errorBefore, ErrorOfInside = errorInside };
    }

    private static (double Before, double Inside) Errors(IReadOnlyCollection<BandOutcome> all)
    {
        var numbers = new Dictionary<int, int>();
        foreach (var outcome in all)
            numbers.TryAdd(outcome.Client, numbers.Count);
        var groups = Math.Min(Groups, numbers.Count);
        if (groups < 2)
            return (double.NaN, double.NaN);
        var without = Enumerable.Range(0, groups).Select(g => Shares([.. all.Where(o => numbers[o.Client] % groups != g)])).ToList();
        return (Spread(s => s.Before), Spread(s => s.Inside));

        double Spread(Func<(double Before, double Inside), double> of)
        {
            var mean = without.Average(of);
            return Math.Sqrt((groups - 1.0) / groups * without.Sum(s => Math.Pow(of(s) - mean, 2)));
        }
    }

    private static (double Before, double Inside) Shares(IReadOnlyCollection<BandOutcome> all)
    {
        var rows = all.CountBy(CellsOf).OrderBy(r => r.Key).Select(r => (r.Key.First, r.Key.Last, Count: (double)r.Value)).ToList();
        var total = rows.Sum(r => r.Count);
        var mass = new double[Cells];
        Array.Fill(mass, 1.0 / Cells);
        var (sums, slopes) = (new double[Cells + 1], new double[Cells + 1]);
        for (var step = 0; step < MostSteps; step++)
        {
            for (var j = 0; j < Cells; j++)
                sums[j + 1] = sums[j] + mass[j];
            Array.Clear(slopes);
            foreach (var (first, last, count) in rows)
            {
                var chance = sums[last + 1] - sums[first];
                if (!(chance > 0))
                    continue;
                slopes[first] += count / chance;
                slopes[last + 1] -= count / chance;
            }
            var (slope, change, left) = (0.0, 0.0, 0.0);
            for (var j = 0; j < Cells; j++)
            {
                slope += slopes[j];
                var next = mass[j] * Math.Max(0, slope) / total;
                change = Math.Max(change, Math.Abs(next - mass[j]));
                left += mass[j] = next;
            }
            if (change < Settled || !(left > 0))
                break;
        }
        var whole = mass.Sum();
        return (mass[..(Cells / 10)].Sum() / whole, mass[(Cells / 10)..(Cells * 9 / 10)].Sum() / whole);
    }

    // The cells in which its end may lie; the edges of the band are edges of cells.
    private static (int First, int Last) CellsOf(BandOutcome outcome)
    {
        var first = Math.Clamp((int)Math.Round(outcome.Lower * Cells), 0, Cells - 1);
        var last = Math.Clamp((int)Math.Round(outcome.Upper * Cells) - 1, 0, Cells - 1);
        if (outcome.Lower < outcome.Upper && last >= first)
            return (first, last);
        var at = Math.Clamp((int)((outcome.Lower + outcome.Upper) / 2 * Cells), 0, Cells - 1);
        return (at, at);
    }
}
