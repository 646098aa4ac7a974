using System.Numerics;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>The life that is left to a unit of known age and grades, on whole days, for any centre and scale of ln T.</summary>
/// <remarks>
/// Made once for a unit; a centre then costs little more than without grades. On each day the chance to end is the closed form's, weighed
/// with p̃ in the middle of the day as Simpson's rule has it; the slopes within the days add up to a term at the first (Euler and
/// Maclaurin). Good to 1e-7 for a life of months, 1e-4 for one of weeks.
/// </remarks>
public sealed class GradedLifeByDay
{
    // Of a year or five nothing is left.
    private const int Longest = 4096;

    // Less than e^-25 is not followed up.
    private const double Sliver = 25;

    private readonly LifeDistribution _distribution;
    private readonly double[] _logs;
    private readonly double[] _weights;
    private readonly double[] _slopes;
    private readonly double _last;

    /// <param name="age">Worn days until today.</param>
    public GradedLifeByDay(GradeCurve curve, double age)
    {
        if (!(age >= 0) || !double.IsFinite(age))
            throw new ArgumentOutOfRangeException(nameof(age), "An age is 0 days or more.");
        (_distribution, Age) = (curve.Grid.Window.Distribution, age);
        // As far as p̃ changes; two days more to see it stand still.
        var days = Math.Clamp((int)Math.Ceiling(Math.Exp(curve.Grid.End) - age), 0, Longest) + 2;
        _logs = new double[days + 1];
        (_weights, _slopes) = (new double[days + 1], new double[days + 1]);
        var heights = new double[days + 3];
        for (var day = 0; day <= days; day++)
            _logs[day] = Math.Log(age + day);
        heights[0] = curve.At(Math.Log(Math.Max(0, age - 1)));
        for (var day = 0; day <= days; day++)
            heights[day + 1] = curve.At(_logs[day]);
        heights[^1] = heights[^2];
        for (var day = 0; day <= days; day++)
        {
            var (before, here, next) = (heights[day], heights[day + 1], heights[day + 2]);
            var second = day < days ? heights[day + 3] : next;
            _weights[day] = (here + next) / 2 - (before - here - next + second) / 12;
            _slopes[day] = age + day > 0 ? (next - before) / 24 / (age + day) : 0;
        }
        _last = heights[^1];
    }

    /// <summary>Worn days until today.</summary>
    public double Age { get; }

    /// <summary>Days from today after which grades change nothing any more.</summary>
    internal int Days => _logs.Length - 1;

    /// <summary>The chance that it still wears so many days from now: 1 today, on day 1, 2 and so on.</summary>
    /// <param name="survival">As many days as are asked for; beyond where the grades tell anything the closed form goes on.</param>
    /// <returns>ln ∫ f p̃ from its age on: what a client's effect with this centre is weighed with, where the unit is not among the rows.</returns>
    public double Fill(double centre, double tau, Span<double> survival)
    {
        Span<double> held = stackalloc double[_logs.Length];
        Span<double> tilt = stackalloc double[_logs.Length];
        var start = Start(centre, tau);
        var end = Held(centre, tau, start, held, tilt);
        // From behind: what ends on each day, and before it what ends later.
        var later = held[end] * _last;
        FillBeyond(end, centre, tau, start, survival);
        for (var day = end; day >= 0; day--)
        {
            if (day < end)
                later += (held[day] - held[day + 1]) * _weights[day];
            if (day < survival.Length)
                survival[day] = later - Within(tilt[day] * _slopes[day], later);
        }
        var whole = later - Within(tilt[0] * _slopes[0], later);
        foreach (ref var chance in survival)
            chance /= whole;
        return Math.Log(whole) - start;
    }

    /// <summary>What <see cref="Fill"/> gives back.</summary>
    public double LogEvidence(double centre, double tau) => Fill(centre, tau, default);

    // Where a life ends within hours the first day's slope is no small correction any more.
    private static double Within(double correction, double whole) => Math.Clamp(correction, -0.1 * whole, 0.1 * whole);

    // −ln S at the unit's age.
    private double Start(double centre, double tau) => Age == 0 ? 0 : Wear((_logs[0] - centre) / tau);

    private double Wear(double z) => _distribution == LifeDistribution.Weibull ? Math.Exp(z) : -NormalTail.LogQ(z);

    // Where the grades change nothing any more the closed form goes on, as long as there is anything left.
    private void FillBeyond(int end, double centre, double tau, double start, Span<double> survival)
    {
        var worn = end < Days ? double.PositiveInfinity : 0;
        for (var day = end + 1; day < survival.Length; day++)
        {
            if (worn <= Sliver)
                worn = Wear((Math.Log(Age + day) - centre) / tau) - start;
            survival[day] = worn > Sliver ? 0 : Math.Exp(-worn) * _last;
        }
    }

    // Survival since today on each day, and the density there times the worn days; gives the last day that is of any account.
    private int Held(double centre, double tau, double start, Span<double> held, Span<double> tilt)
    {
        var day = 0;
        if (_distribution == LifeDistribution.Weibull)
        {
            var (middle, inverse, begun) = (new Vector<double>(centre), new Vector<double>(1 / tau), new Vector<double>(start));
            for (; day <= held.Length - Vector<double>.Count; day += Vector<double>.Count)
            {
                var wear = Vector.Exp((new Vector<double>(_logs, day) - middle) * inverse);
                var still = Vector.Exp(begun - wear);
                still.CopyTo(held[day..]);
                (still * wear * inverse).CopyTo(tilt[day..]);
                if (wear[0] - start > Sliver)
                    return day;
            }
        }
        for (; day < held.Length; day++)
        {
            var z = (_logs[day] - centre) / tau;
            var wear = Wear(z);
            held[day] = Math.Exp(start - wear);
            var ending =
                _distribution == LifeDistribution.Weibull ? wear * held[day] : Math.Exp(start - z * z / 2 - NormalTail.LogRootTwoPi);
            tilt[day] = ending / tau;
            if (wear - start > Sliver)
                return day;
        }
        return held.Length - 1;
    }
}
