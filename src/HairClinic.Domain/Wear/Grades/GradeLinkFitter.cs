using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>Learns a practice's link between grades and lives: the highest point of its posterior density.</summary>
/// <remarks>
/// The likelihood is Σ ln(∫ f 1 p̃ / ∫ f 1): the lives are as the fit without grades has them, and only what the grades add is climbed, by
/// Newton's steps with slopes and bends from differences. Where it bends upwards a step goes up all the same (the bend's size counts), so
/// that saddles are left. c and ψ are climbed in logarithms, which keep c₁ &lt; c₂ &lt; 0 and ψ &gt; 0. The rows know v only by its
/// sign-free size, so ψ has a slope at 0 from its prior alone and does not end there.
/// </remarks>
public static class GradeLinkFitter
{
    /// <summary>More units teach next to nothing more.</summary>
    public const int MostUnits = 2000;

    /// <summary>One look tells nothing of how grades follow each other.</summary>
    public const int FewestLooks = 2;

    private const int Longest = 60;
    private const double ShortRise = 1e-4;

    // Of the rise that is left, what the differences' own errors may hide.
    private const double LostRise = 1e-2;

    /// <param name="units">The latest first: no more than <see cref="MostUnits"/> with enough looks are used.</param>
    public static GradeLinkFit Fit(IEnumerable<GradedUnit> units)
    {
        var posterior = new GradeLinkPosterior([.. units.Where(unit => unit.Grades.Looks >= FewestLooks).Take(MostUnits)]);
        var at = GradeLinkPosterior.Coordinates(GradeLink.Usual);
        var value = posterior.ValueAt(at);
        var (converged, iterations) = (posterior.Units == 0, 0);
        while (!converged && iterations < Longest)
        {
            iterations++;
            var (step, rise, isTop) = Step(posterior, at, value);
            converged = isTop && rise < ShortRise;
            if (converged)
                break;
            if (!TryClimb(posterior, step, ref at, ref value))
            {
                converged = isTop && rise < LostRise;
                break;
            }
        }
        return new(GradeLinkPosterior.Link(at), posterior.Units, value, iterations, converged);
    }

    private static (double[] Step, double Rise, bool IsTop) Step(GradeLinkPosterior posterior, double[] at, double value)
    {
        var (gradient, bend) = posterior.Slopes(at, value);
        var parts = bend.Evd(Symmetricity.Symmetric);
        var bends = parts.EigenValues.Map(v => v.Real);
        var along = parts.EigenVectors.TransposeThisAndMultiply(gradient);
        var step = parts.EigenVectors * along.MapIndexed((k, slope) => slope / Math.Max(Math.Abs(bends[k]), 1e-3));
        return (step.ToArray(), step.DotProduct(gradient), bends.Maximum() < 0);
    }

    private static bool TryClimb(GradeLinkPosterior posterior, double[] step, ref double[] at, ref double value)
    {
        // No further than e-fold in anything at once.
        var share = Math.Min(1, 1 / step.Max(Math.Abs));
        for (var halving = 0; halving < 20; halving++, share /= 2)
        {
            var next = (double[])at.Clone();
            VectorSums.AddScaled(next, step, share);
            var height = posterior.ValueAt(next);
            if (!(height > value))
                continue;
            (at, value) = (next, height);
            return true;
        }
        return false;
    }
}

/// <summary>What is climbed, in coordinates without bounds.</summary>
internal sealed class GradeLinkPosterior
{
    // Wide enough that rounding does not show, narrow beside what is learnt.
    private const double Apart = 0.02;
    private readonly GradedUnit[] _units;
    private readonly GradeGrid[] _grids;
    private readonly int[] _gridOf;

    public GradeLinkPosterior(GradedUnit[] units)
    {
        _units = units;
        var windows = units.Select(unit => unit.Window).Distinct().ToList();
        _grids = [.. windows.Select(window => new GradeGrid(window))];
        _gridOf = [.. units.Select(unit => windows.IndexOf(unit.Window))];
    }

    public int Units => _units.Length;

    public static double[] Coordinates(GradeLink link)
    {
        var values = link.Parameters();
        (values[0], values[1], values[2]) = (Math.Log(values[1] - values[0]), Math.Log(-values[1]), Math.Log(values[2]));
        return values;
    }

    public static GradeLink Link(double[] at)
    {
        var fair = -Math.Exp(at[1]);
        return new(fair - Math.Exp(at[0]), fair, Math.Exp(at[2]), at[3], at[4], at[5], at[6]);
    }

    public double ValueAt(double[] at)
    {
        var link = Link(at);
        if (!link.IsValid)
            return double.NegativeInfinity;
        var builders = Array.ConvertAll(_grids, grid => new GradeCurveBuilder(link, grid));
        var terms = new double[_units.Length];
        Parallel.For(
            0,
            terms.Length,
            i =>
            {
                var row = GradedSpell.FromLife(_units[i].Life, builders[_gridOf[i]].Build(_units[i].Grades));
                terms[i] = row.LogGradeFactor(_units[i].Centre, _units[i].Tau);
            }
        );
        // In the units' order: the same sum every time.
        return VectorSums.Sum(terms) + link.LogPriorDensity;
    }

    public (Vector<double> Gradient, Matrix<double> Bend) Slopes(double[] at, double value)
    {
        var gradient = Vector<double>.Build.Dense(at.Length);
        var bend = Matrix<double>.Build.Dense(at.Length, at.Length);
        var (up, down) = (new double[at.Length], new double[at.Length]);
        for (var i = 0; i < at.Length; i++)
        {
            (up[i], down[i]) = (Beside(at, i, i, Apart / 2), Beside(at, i, i, -Apart / 2));
            gradient[i] = (up[i] - down[i]) / (2 * Apart);
            bend[i, i] = (up[i] + down[i] - 2 * value) / (Apart * Apart);
            for (var j = 0; j < i; j++)
            {
                var both = Beside(at, i, j, Apart) + Beside(at, i, j, -Apart);
                bend[i, j] = bend[j, i] = (both - up[i] - down[i] - up[j] - down[j] + 2 * value) / (2 * Apart * Apart);
            }
        }
        return (gradient, bend);
    }

    private double Beside(double[] at, int i, int j, double step)
    {
        var moved = (double[])at.Clone();
        moved[i] += step;
        moved[j] += step;
        return ValueAt(moved);
    }
}

/// <summary>A learnt link, and how it came about.</summary>
/// <param name="Units">From which it was learnt; with none it is what is assumed.</param>
/// <param name="LogPosterior">Of the grades given the lives, with the priors.</param>
/// <param name="Converged">It is the highest point; else do without grades, or with the link before.</param>
public sealed record GradeLinkFit(GradeLink Link, int Units, double LogPosterior, int Iterations, bool Converged);
