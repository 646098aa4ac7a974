using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>What is known of a unit's life and its grades, as one row of the fit: L(μ, τ) = ∫ f((x − μ)/τ) p̃(x) dx over where x may lie.</summary>
/// <remarks>
/// It is the row's closed form times the mean of p̃ over the lives that it leaves, so that grades that say nothing leave the row as it was
/// to the last digits. The mean is the quotient of two sums on the same nodes, which stay where they are for every μ and τ: value and
/// derivatives belong to one smooth function. Good to 1e-6 of L where τ is the window's σ and 1e-5 where it is half of it; of a life that
/// is so early or late for its centre that hardly one in a thousand is, to 1e-3. ln L is not concave in μ, as rows without grades are.
/// </remarks>
public sealed class GradedSpell
{
    // Less than e^-32 of the whole is not followed up.
    private const double Sliver = -32;

    private readonly LifeDistribution _distribution;
    private readonly Part _whole;
    private readonly GradePanels? _panels;

    // Where there are panels: the stretch that they are laid over, and what lies beside the grid, over which p̃ stands still.
    private readonly Part _middle;
    private readonly Part? _before;
    private readonly Part? _beyond;

    private GradedSpell(GradeCurve curve, SpellEnd end, double logLower, double logUpper)
    {
        var grid = curve.Grid;
        _distribution = grid.Window.Distribution;
        _whole = new(curve.At(end == SpellEnd.By ? logUpper : logLower), end, logLower, logUpper);
        var (from, to) = (Math.Max(logLower, grid.Start), Math.Min(logUpper, grid.End));
        if (end == SpellEnd.At || from >= to)
            return;
        _panels = new GradePanels(curve, from, to);
        _middle = new(_whole.Height, SpellEnd.Between, from, to);
        if (logLower < from)
            _before = new(curve.Values[0], double.IsNegativeInfinity(logLower) ? SpellEnd.By : SpellEnd.Between, logLower, from);
        if (logUpper > to)
            _beyond = new(curve.Values[^1], double.IsPositiveInfinity(logUpper) ? SpellEnd.After : SpellEnd.Between, to, logUpper);
    }

    public static GradedSpell FromLife(Spell life, GradeCurve curve) =>
        new(
            curve,
            life.End,
            life.Lower > 0 ? Math.Log(life.Lower) : double.NegativeInfinity,
            life.End == SpellEnd.At ? Math.Log(life.Lower) : Math.Log(life.Upper)
        );

    /// <summary>The logarithm of L; of an exact end the density of T, as in a row without grades.</summary>
    /// <param name="centre">μ: m + xᵀβ + λ·(δ + b).</param>
    /// <param name="tau">eˢ·σ.</param>
    public double LogLikelihood(double centre, double tau) => Evaluate(centre, tau).Value;

    /// <summary>The same, with its derivatives by μ and by s = ln τ.</summary>
    /// <param name="slopes">By μ and by s.</param>
    /// <param name="bends">By μ twice, by μ and s, by s twice.</param>
    public double LogLikelihood(double centre, double tau, Span<double> slopes, Span<double> bends)
    {
        var terms = Evaluate(centre, tau);
        (slopes[0], slopes[1]) = (terms.E, terms.S);
        (bends[0], bends[1], bends[2]) = (terms.EE, terms.ES, terms.SS);
        return terms.Value;
    }

    /// <summary>The logarithm of L for many centres at one scale: what they share is computed once.</summary>
    public void LogLikelihoods(ReadOnlySpan<double> centres, double tau, Span<double> values)
    {
        Span<double> growth = stackalloc double[_panels?.GrowthLength(tau) ?? 0];
        _panels?.Grow(tau, growth);
        for (var k = 0; k < centres.Length; k++)
            values[k] = Evaluate(centres[k], tau, growth).Value;
    }

    /// <summary>ln(∫ f 1 p̃ / ∫ f 1): how much likelier its grades are for the lives it may have had.</summary>
    public double LogGradeFactor(double centre, double tau) => Evaluate(centre, tau).Value - ClosedForm(_whole, centre, tau).Value;

    /// <summary>One row as the fit sums it; a drop-in for the closed forms.</summary>
    internal RowLogLikelihood Evaluate(double centre, double tau) => Evaluate(centre, tau, default);

    /// <summary>The same for many centres at one scale, as on the nodes of a client's effect.</summary>
    internal void Evaluate(ReadOnlySpan<double> centres, double tau, Span<RowLogLikelihood> rows)
    {
        Span<double> growth = stackalloc double[_panels?.GrowthLength(tau) ?? 0];
        _panels?.Grow(tau, growth);
        for (var k = 0; k < centres.Length; k++)
            rows[k] = Evaluate(centres[k], tau, growth);
    }

    private RowLogLikelihood Evaluate(double centre, double tau, ReadOnlySpan<double> growth)
    {
        if (_panels is null)
            return Scaled(ClosedForm(_whole, centre, tau), _whole.Height);
        var middle = ClosedForm(_middle, centre, tau);
        if (_panels.TryLogMean(centre, tau, middle.Value, Sliver, growth, out var mean))
            middle = Sum(middle, mean);
        else
            middle = Scaled(middle, _middle.Height);
        if (_before is null && _beyond is null)
            return middle;
        var sums = new RowMixture();
        sums.Add(1, middle);
        Add(_before, middle.Value, centre, tau, ref sums);
        Add(_beyond, middle.Value, centre, tau, ref sums);
        return sums.ToRow(middle.Value);
    }

    private void Add(in Part? part, double middle, double centre, double tau, ref RowMixture sums)
    {
        if (part is not { } given)
            return;
        // No more than e^(−z²/2) of normal noise lies above z, nor more than that below −z.
        var z = given.End == SpellEnd.After ? (given.LogLower - centre) / tau : (centre - given.LogUpper) / tau;
        if (_distribution == LifeDistribution.LogNormal && z > 0 && -z * z / 2 - middle < Sliver)
            return;
        var terms = ClosedForm(given, centre, tau);
        var share = Math.Log(given.Height) + terms.Value - middle;
        if (share > Sliver)
            sums.Add(Math.Exp(share), terms);
    }

    private RowLogLikelihood ClosedForm(in Part part, double centre, double tau)
    {
        if (part.End == SpellEnd.After && double.IsNegativeInfinity(part.LogLower))
            return default;
        return _distribution == LifeDistribution.Weibull
            ? WeibullLikelihood.Evaluate(part.End, part.LogLower, part.LogUpper, centre, tau)
            : LogNormalLikelihood.Evaluate(part.End, part.LogLower, part.LogUpper, centre, tau);
    }

    private static RowLogLikelihood Scaled(in RowLogLikelihood row, double height) => row with { Value = row.Value + Math.Log(height) };

    private static RowLogLikelihood Sum(in RowLogLikelihood a, in RowLogLikelihood b) =>
        new(a.Value + b.Value, a.E + b.E, a.S + b.S, a.EE + b.EE, a.ES + b.ES, a.SS + b.SS);

    /// <summary>A stretch of x, with p̃ at one place of it.</summary>
    private readonly record struct Part(double Height, SpellEnd End, double LogLower, double LogUpper);
}
