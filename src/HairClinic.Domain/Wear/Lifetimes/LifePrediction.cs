using System.Numerics;
using HairClinic.Domain.Wear.Grades;
using MathNet.Numerics.RootFinding;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>How long a client's next bond will hold, or a unit last, as far as can be predicted: a distribution, never a single date.</summary>
public sealed class LifePrediction
{
    private readonly double[] _centres;
    private readonly double[] _logShares;
    private readonly double[] _taus;
    private readonly bool _weibull;
    private readonly LifeShape? _shape;
    private readonly RepairClock _clock;
    private readonly (double Age, Lazy<double[]> ByDay)? _graded;
    private readonly LifePrediction? _byAge;

    private static readonly (double Shift, double Share)[] KnownScale = [(0, 1)];
    private static readonly (double Shift, double Share)[] DoubtfulScale =
    [
        (-Math.Sqrt(3), 1 / 6.0),
        (0, 2 / 3.0),
        (Math.Sqrt(3), 1 / 6.0),
    ];

    // Some eight years: nothing here lasts so long.
    private const int FarthestDays = 3000;

    /// <param name="place">The window of what is predicted.</param>
    /// <param name="covariates">Its xᵀβ as it is from now on; 0 where none is known.</param>
    public LifePrediction(PopulationParameters population, ClientEffectNodes client, RowLocationScale place, double covariates = 0)
    {
        _weibull = population.Distribution == LifeDistribution.Weibull;
        (Own, Others) = (client.Own, Math.Max(0, population.Count - client.Own));
        var moves = place.Loading * population.LogScaleSlope * Math.Sqrt(population.LogScaleVariance);
        var scales = BranchesOfScale(population, place.Sigma, moves).ToArray();
        var count = client.Nodes.Length * scales.Length;
        (_centres, _logShares, _taus) = (new double[count], new double[count], new double[count]);
        var at = 0;
        foreach (var scale in scales)
        {
            for (var k = 0; k < client.Nodes.Length; k++, at++)
            {
                _taus[at] = scale.Tau;
                _centres[at] = place.Offset + covariates + place.Loading * client.Nodes[k] + scale.Shift;
                _logShares[at] = Math.Log(client.Shares[k] * scale.Weight);
            }
        }
    }

    /// <summary>Of a unit, of which more than one thing may be true.</summary>
    /// <param name="shape">How ln T lies about its centre.</param>
    /// <param name="clock">Its own; the default for one that was never repaired.</param>
    public LifePrediction(
        PopulationParameters population,
        ClientEffectNodes client,
        RowLocationScale place,
        double covariates,
        LifeShape shape,
        RepairClock clock
    )
    {
        (_shape, _clock) = (shape, clock);
        (Own, Others) = (client.Own, Math.Max(0, population.Count - client.Own));
        var few = client.Reduced(9);
        _centres = Array.ConvertAll(few.Nodes, at => place.Offset + covariates + place.Loading * at);
        _logShares = Array.ConvertAll(few.Shares, Math.Log);
        _taus = Array.ConvertAll(few.Nodes, _ => place.Sigma * Math.Exp(population.LogScale));
    }

    /// <summary>Where s is known there is one scale; else Gauss's rule of three over it, the centre moving along.</summary>
    /// <param name="sigma">Of the window.</param>
    /// <param name="moves">By how much the centre moves with one standard deviation of s.</param>
    public static IEnumerable<LifeBranch> BranchesOfScale(PopulationParameters population, double sigma, double moves) =>
        (population.LogScaleVariance > 0 ? DoubtfulScale : KnownScale).Select(at => new LifeBranch(
            at.Share,
            at.Shift * moves,
            sigma * Math.Exp(population.LogScale + at.Shift * Math.Sqrt(population.LogScaleVariance))
        ));

    private LifePrediction(LifePrediction whole, int place)
    {
        (_weibull, _taus) = (whole._weibull, [whole._taus[place]]);
        (_centres, _logShares) = ([whole._centres[place]], [0]);
        (Own, Others) = (whole.Own, whole.Others);
    }

    // Of a unit of that age with these grades; by day from then on, until next to nothing is left.
    private LifePrediction(LifePrediction whole, double age, GradeWeights grades)
    {
        (_centres, _logShares, _taus, _weibull) = (whole._centres, whole._logShares, whole._taus, whole._weibull);
        (_shape, _clock, Own, Others) = (whole._shape, whole._clock, whole.Own, whole.Others);
        (_byAge, Grades) = (whole, grades);
        _graded = (
            age,
            new(() =>
            {
                var survival = new double[whole.WholeDayQuantileGiven(age, 1 - NothingLeft) + 2];
                for (var day = 0; day < survival.Length; day++)
                    survival[day] = whole.SurvivalGiven(age, day);
                grades.Weigh(survival);
                return survival;
            })
        );
    }

    private const double NothingLeft = 1e-9;

    /// <summary>What it is weighed with; null without.</summary>
    public GradeWeights? Grades { get; }

    /// <summary>As its age alone has it.</summary>
    public LifePrediction WithoutGrades => _byAge ?? this;

    /// <summary>The same with what the grades of the unit say: of what is left to it at this age. Asked for another age it is as without.</summary>
    /// <param name="age">Worn days, at which it is asked.</param>
    public LifePrediction WithGrades(double age, GradeWeights grades) => new(this, age, grades);

    /// <summary>Spells of this client's own behind it.</summary>
    public int Own { get; }

    /// <summary>Spells of others behind it.</summary>
    public int Others { get; }

    public double Median => Quantile(0.5);

    /// <summary>The 10 % and 90 % quantiles.</summary>
    public (double From, double To) Band => (Quantile(0.1), Quantile(0.9));

    /// <summary>S(t).</summary>
    public double Survival(double days) => Math.Exp(LogSurvival(0, _clock.AgeAfter(days)));

    /// <summary>S(t) on the days 0, 1, 2 and so on.</summary>
    public void SurvivalByDay(Span<double> survival)
    {
        var logs = survival.Length <= 512 ? stackalloc double[survival.Length] : new double[survival.Length];
        for (var day = 0; day < logs.Length; day++)
            logs[day] = Math.Log(day);
        survival.Clear();
        for (var day = 0; _shape is not null && day < survival.Length; day++)
            survival[day] = Survival(day);
        for (var k = 0; _shape is null && k < _centres.Length; k++)
        {
            var (share, day) = (Math.Exp(_logShares[k]), 0);
            if (_weibull)
            {
                var (centre, inverse) = (new Vector<double>(_centres[k]), new Vector<double>(1 / _taus[k]));
                for (; day <= survival.Length - Vector<double>.Count; day += Vector<double>.Count)
                {
                    var held = Vector.Exp(-Vector.Exp((new Vector<double>(logs[day..]) - centre) * inverse));
                    (new Vector<double>(survival[day..]) + share * held).CopyTo(survival[day..]);
                }
            }
            for (; day < survival.Length; day++)
            {
                var z = (logs[day] - _centres[k]) / _taus[k];
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
        if (_graded is { } graded && graded.Age == age)
            return GradedSurvival(graded.ByDay.Value, days);
        var own = _clock.AgeAfter(age);
        var lasted = LogSurvival(own, own);
        if (double.IsNegativeInfinity(lasted))
            return days > 0 ? 0 : 1;
        return Math.Exp(LogSurvival(own, _clock.AgeAfter(age + days)) - lasted);
    }

    /// <summary>The days by which a share has ended.</summary>
    public double Quantile(double probability) => RemainingQuantile(0, probability);

    /// <summary>The further days by which a share has ended, of what lasted <paramref name="age"/> days.</summary>
    public double RemainingQuantile(double age, double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), "A quantile needs 0 < p < 1.");
        if (_graded is { } graded && graded.Age == age)
            return GradedQuantile(graded.ByDay.Value, probability);
        var worn = age;
        age = _clock.AgeAfter(age);
        var height = LogSurvival(age, age) + Math.Log(1 - probability);
        var widest = _taus.Max();
        var (low, high) = (_centres.Min() - 60 * widest, Math.Max(_centres.Max(), Math.Log(age + 1)) + 20 * widest);
        while (LogSurvival(age, Math.Exp(high)) > height)
            high += 20 * widest;
        if (age > 0)
            low = Math.Log(age);
        // So far past any life that what is left is less than numbers of its age can tell.
        if (!(LogSurvival(age, Math.Exp(low)) > height))
            return 0;
        var log = Brent.FindRoot(at => LogSurvival(age, Math.Exp(at)) - height, low, high, 1e-12, 200);
        return Math.Max(0, _clock.WornDaysAt(Math.Exp(log)) - worn);
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
    /// <exception cref="InvalidOperationException">It is a unit's: its parts are in its shape.</exception>
    internal IEnumerable<(double Share, LifePrediction Hold)> MixtureComponents()
    {
        if (_shape is not null)
            throw new InvalidOperationException("A unit's life has no parts of its own.");
        for (var k = 0; k < _centres.Length; k++)
            yield return (Math.Exp(_logShares[k]), new LifePrediction(this, k));
    }

    private static double GradedSurvival(double[] byDay, double days)
    {
        if (!(days > 0))
            return 1;
        if (days >= byDay.Length - 1)
            return 0;
        var whole = (int)days;
        return byDay[whole] + (days - whole) * (byDay[whole + 1] - byDay[whole]);
    }

    private static double GradedQuantile(double[] byDay, double probability)
    {
        var day = 1;
        while (day < byDay.Length - 1 && byDay[day] > 1 - probability)
            day++;
        var (before, after) = (byDay[day - 1], byDay[day]);
        return after < before ? day - 1 + Math.Clamp((before - (1 - probability)) / (before - after), 0, 1) : day;
    }

    // Of the unit's own age: the chance to reach the later one, among all that did not end, nor took a later course, by the earlier.
    private double LogSurvival(double age, double days)
    {
        if (days <= 0)
            return 0;
        var (log, logAge, top, sum) = (Math.Log(days), Math.Log(age), double.NegativeInfinity, 0.0);
        for (var k = 0; k < _centres.Length; k++)
        {
            var z = (log - _centres[k]) / _taus[k];
            var height =
                _logShares[k]
                + (
                    _shape is { } shape ? shape.LogSurvival(logAge, log, _centres[k])
                    : _weibull ? -Math.Exp(z)
                    : NormalTail.LogQ(z)
                );
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
