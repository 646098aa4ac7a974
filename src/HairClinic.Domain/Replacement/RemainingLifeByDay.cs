using System.Numerics;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>The remaining life of one unit, of a client whose effect is known, laid on whole days.</summary>
/// <param name="centre">Of ln T, the client's effect included.</param>
/// <param name="tau">The scale eˢ·σ of ln T.</param>
/// <param name="age">Worn days until today.</param>
internal readonly ref struct RemainingLifeByDay(LifeDistribution distribution, double centre, double tau, int age)
{
    // Logarithms are kept for some forty years of worn days.
    private const int Longest = 1 << 14;

    private static readonly double[] LogWhole = [.. Enumerable.Range(0, Longest).Select(day => Math.Log(day))];
    private static readonly double[] LogHalf = [.. Enumerable.Range(0, Longest).Select(day => Math.Log(day + 0.5))];
    private readonly double _worn = Wear(distribution, (Math.Log(age) - centre) / tau);

    // So far past its life that no number holds the wear: it is worn out today.
    private bool IsGone => double.IsPositiveInfinity(_worn);

    /// <summary>Adds a share of the chance that it is worn out before each day; before today it is not.</summary>
    public void AddCumulativeTo(Span<double> table, double share)
    {
        var (first, end) = IsGone ? (0, 0) : Stretch(table.Length);
        (first, end) = (Math.Max(first, 1), Math.Max(end, 1));
        Fill(LogWhole, 0, table[first..end], first, share, add: true);
        for (var day = end; day < table.Length; day++)
            table[day] += share;
    }

    /// <summary>Puts on each day the chance that it is worn out within half a day of it.</summary>
    public void WriteProbabilitiesTo(DayProbabilities onto)
    {
        if (IsGone)
        {
            onto.SetAllOnToday();
            return;
        }
        onto.Clear();
        var (first, end) = Stretch(onto.Mass.Length);
        (onto.First, onto.End) = (first, end);
        Fill(LogHalf, 0.5, onto.Mass[first..end], first, 1, add: false);
        var before = 0.0;
        foreach (ref var mass in onto.Mass[first..end])
            (mass, before) = (mass - before, mass);
    }

    // −ln of the survival, whole.
    private static double Wear(LifeDistribution distribution, double z) =>
        distribution == LifeDistribution.Weibull ? Math.Exp(z) : -NormalTail.LogQ(z);

    // The days before which next to nothing, and after which next to everything, is worn out.
    private (int First, int End) Stretch(int length)
    {
        if (distribution == LifeDistribution.Weibull)
        {
            var from = Math.Exp(centre + tau * Math.Log(_worn + DayProbabilities.Sliver)) - age;
            var to = Math.Exp(centre + tau * Math.Log(_worn + 16.2)) - age;
            var first = Math.Clamp((int)Math.Min(from, length), 0, length);
            return (first, Math.Clamp((int)Math.Min(to + 2, length), first, length));
        }
        // Of what is older than most live to be, the end lies farther out: −ln Q rises by at least half of what z² does.
        var z = Math.Max(0, (Math.Log(age) - centre) / tau);
        var (low, high) = (Math.Exp(centre - 5.4 * tau) - age, Math.Exp(centre + tau * Math.Sqrt(z * z + 5.4 * 5.4)));
        var begin = age > 0 ? 0 : Math.Clamp((int)Math.Min(low, length), 0, length);
        return (begin, Math.Clamp((int)Math.Min(high + 2, length), begin, length));
    }

    // logs[n] is ln(n + part); where none is kept it is worked out.
    private void Fill(double[] logs, double part, Span<double> into, int first, double share, bool add)
    {
        var i = 0;
        var areKept = (long)age + first + into.Length <= logs.Length;
        if (distribution == LifeDistribution.Weibull && areKept)
        {
            var (middle, inverse, start) = (new Vector<double>(centre), new Vector<double>(1 / tau), new Vector<double>(_worn));
            for (; i <= into.Length - Vector<double>.Count; i += Vector<double>.Count)
            {
                var wear = Vector.Max(
                    Vector.Exp((new Vector<double>(logs, age + first + i) - middle) * inverse) - start,
                    Vector<double>.Zero
                );
                var ended = (Vector<double>.One - Vector.Exp(-wear)) * share;
                (add ? new Vector<double>(into[i..]) + ended : ended).CopyTo(into[i..]);
            }
        }
        for (; i < into.Length; i++)
        {
            var log = areKept ? logs[age + first + i] : Math.Log((double)age + first + i + part);
            var wear = Math.Max(Wear(distribution, (log - centre) / tau) - _worn, 0);
            into[i] = (add ? into[i] : 0) + share * (1 - Math.Exp(-wear));
        }
    }
}
