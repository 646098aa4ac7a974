using System.Numerics;
using MathNet.Numerics.RootFinding;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>How long a client's next bond will hold, or a unit last, as far as can be predicted: a distribution, never a single date.</summary>
public sealed class LifePrediction
{
    private readonly double[] _centres;
    private readonly double[] _logShares;
    private readonly double _tau;
    private readonly bool _weibull;

    // Some eight years: nothing here lasts so long.
    private const int FarthestDays = 3000;

    /// <param name="place">The window of what is predicted.</param>
    /// <param name="covariates">Its xᵀβ as it is from now on; 0 where none is known.</param>
    public LifePrediction(PopulationParameters population, ClientEffectNodes client, RowLocationScale place, double covariates = 0)
    {
        _weibull = population.Distribution == LifeDistribution.Weibull;
        _tau = place.Sigma * Math.Exp(population.LogScale);
        _centres = Array.ConvertAll(client.Nodes, at => place.Offset + covariates + place.Loading * at);
        _logShares = Array.ConvertAll(client.Shares, Math.Log);
        (Own, Others) = (client.Own, Math.Max(0, population.Count - client.Own));
    }

    private LifePrediction(LifePrediction whole, int place)
    {
        (_weibull, _tau) = (whole._weibull, whole._tau);
        (_centres, _logShares) = ([whole._centres[place]], [0]);
        (Own, Others) = (whole.Own, whole.Others);
    }

    /// <summary>Spells of this client's own behind it.</summary>
    public int Own { get; }

    /// <summary>Spells of others behind it.</summary>
    public int Others { get; }

    public double Median => Quantile(0.5);

    /// <summary>The 10 % and 90 % quantiles.</summary>
    public (double From, double To) Band => (Quantile(0.1), Quantile(0.9));

    /// <summary>S(t).</summary>
    public double Survival(double days) => Math.Exp(LogSurvival(days));

    /// <summary>S(t) on the days 0, 1, 2 and so on.</summary>
    public void SurvivalByDay(Span<double> survival)
    {
        var logs = survival.Length <= 512 ? stackalloc double[survival.Length] : new double[survival.Length];
        for (var day = 0; day < logs.Length; day++)
            logs[day] = Math.Log(day);
        survival.Clear();
        for (var k = 0; k < _centres.Length; k++)
        {
            var (share, day) = (Math.Exp(_logShares[k]), 0);
            if (_weibull)
            {
                var (centre, inverse) = (new Vector<double>(_centres[k]), new Vector<double>(1 / _tau));
                for (; day <= survival.Length - Vector<double>.Count; day += Vector<double>.Count)
                {
                    var held = Vector.Exp(-Vector.Exp((new Vector<double>(logs[day..]) - centre) * inverse));
                    (new Vector<double>(survival[day..]) + share * held).CopyTo(survival[day..]);
                }
            }
            for (; day < survival.Length; day++)
            {
                var z = (logs[day] - _centres[k]) / _tau;
                survival[day] += share * Math.Exp(_weibull ? -Math.Exp(z) : NormalTail.LogQ(z));
            }
        }
        if (survival.Length > 0)
            survival[0] = 1;
    }

    /// <summary>S(a + t) / S(a): having lasted a days. That says what the age tells: it is not among the client's rows too.</summary>
    /// <remarks>0 where the age is so far past any life that no number holds the chance to reach it.</remarks>
    public double SurvivalGiven(double age, double days)
    {
        var lasted = LogSurvival(age);
        if (double.IsNegativeInfinity(lasted))
            return days > 0 ? 0 : 1;
        return Math.Exp(LogSurvival(age + days) - lasted);
    }

    /// <summary>The days by which a share has ended.</summary>
    public double Quantile(double probability) => RemainingQuantile(0, probability);

    /// <summary>The further days by which a share has ended, of what lasted <paramref name="age"/> days.</summary>
    public double RemainingQuantile(double age, double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), "A quantile needs 0 < p < 1.");
        var height = LogSurvival(age) + Math.Log(1 - probability);
        var (low, high) = (_centres.Min() - 60 * _tau, Math.Max(_centres.Max(), Math.Log(age + 1)) + 20 * _tau);
        while (LogSurvival(Math.Exp(high)) > height)
            high += 20 * _tau;
        if (age > 0)
            low = Math.Log(age);
        // So far past any life that what is left is less than numbers of its age can tell.
        if (!(LogSurvival(Math.Exp(low)) > height))
            return 0;
        var log = Brent.FindRoot(at => LogSurvival(Math.Exp(at)) - height, low, high, 1e-12, 200);
        return Math.Max(0, Math.Exp(log) - age);
    }

    /// <summary>The whole days after which a share has ended, of what lasted <paramref name="age"/> days; no more than a calendar can be asked for.</summary>
    public int WholeDayQuantileGiven(double age, double probability) =>
        (int)Math.Round(Math.Min(RemainingQuantile(age, probability), FarthestDays));

    /// <summary>The last whole day, at least 1, on which at least this share goes on: fixed when a bond is made.</summary>
    public int LastDayAtOrAbove(double survival)
    {
        var day = Math.Max(1, (int)Quantile(1 - survival));
        // The quantile may land a rounding error beside a whole day: the definition decides.
        while (Survival(day + 1) >= survival)
            day++;
        while (day > 1 && Survival(day) < survival)
            day--;
        return day;
    }

    /// <summary>What it is made of: each value that a client's effect may have, with its share, and what to expect under it.</summary>
    internal IEnumerable<(double Share, LifePrediction Hold)> MixtureComponents()
    {
        for (var k = 0; k < _centres.Length; k++)
            yield return (Math.Exp(_logShares[k]), new LifePrediction(this, k));
    }

    private double LogSurvival(double days)
    {
        if (days <= 0)
            return 0;
        var (log, top, sum) = (Math.Log(days), double.NegativeInfinity, 0.0);
        for (var k = 0; k < _centres.Length; k++)
        {
            var z = (log - _centres[k]) / _tau;
            var height = _logShares[k] + (_weibull ? -Math.Exp(z) : NormalTail.LogQ(z));
            // A place so unlikely that its share is 0 adds nothing.
            if (double.IsNegativeInfinity(height))
                continue;
            if (height > top)
                (sum, top) = (sum * Math.Exp(top - height) + 1, height);
            else
                sum += Math.Exp(height - top);
        }
        return double.IsNegativeInfinity(top) ? top : top + Math.Log(sum);
    }
}
