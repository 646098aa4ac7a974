using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Watch;

/// <summary>
/// Has a stream – a workshop's units, an adhesive's bonds – got worse from one of its places on? For every place it might have been,
/// how much likelier the records are if all from there on last shorter by one and the same share than if nothing has changed.
/// </summary>
/// <remarks>
/// The fit is of all rows as if nothing had changed, so a decline has already pulled it down; had the watched rows been left out,
/// the parameters would be elsewhere and in more doubt. Each supposition is therefore weighed over everything that δ and β may be, the rows
/// from the place on shifted under it, all others as they are: they, and the priors, are the reference. The integrals are
/// Laplace's. From one place to the next one client's rows change: they are laid anew about the supposition's own peak, so one pass
/// over the stream serves for all places. The scale is the fit's.
/// </remarks>
public static class ShiftScan
{
    /// <summary>What is looked for: from the place on, lives or holds are shorter by 22 % (0.25 in ln T).</summary>
    public const double Decline = -0.25;

    /// <param name="fit">Of these rows, all of them, and of no others that have changed since: it is taken to stand at their peak.</param>
    /// <param name="rows">All rows of each client who has one in the stream, in any order.</param>
    /// <param name="length">Units of the stream.</param>
    /// <param name="from">The first place at which it may have begun.</param>
    /// <returns>
    /// For each place what it adds: the sum from a place to the end is the logarithm of how much likelier the records are if it began there.
    /// 0 before <paramref name="from"/>.
    /// </returns>
    public static double[] Increments(WatchedFit fit, IEnumerable<WatchedRow> rows, int length, int from = 0, double shift = Decline)
    {
        var likelihood = new ClientShiftLikelihood(fit);
        var clients = ByClient(rows).Where(own => own.Any(r => r.Order >= from)).ToList();
        var owners = new List<int>[length];
        for (var c = 0; c < clients.Count; c++)
        {
            foreach (var order in clients[c].Select(r => r.Order).Where(o => o >= from).Distinct())
                (owners[order] ??= []).Add(c);
        }
        var laid = clients.ConvertAll(own => LocalQuadratic.At(likelihood, own, length, shift, new double[likelihood.Size - 1]));
        var support = new QuadraticSum(fit.PrecisionAtScale());
        var increments = new double[length];
        var after = 0.0;
        for (var order = length - 1; order >= from; order--)
        {
            foreach (var c in owners[order] ?? [])
            {
                var anew = LocalQuadratic.At(likelihood, clients[c], order, shift, support.Peak);
                support.Replace(laid[c], anew);
                laid[c] = anew;
            }
            increments[order] = support.Height - after;
            after = support.Height;
        }
        return increments;
    }

    /// <summary>Each client's rows that tell something; a unit of nobody's stands for itself.</summary>
    internal static IEnumerable<List<WatchedRow>> ByClient(IEnumerable<WatchedRow> rows) =>
        rows.Where(r => !r.TellsNothing).GroupBy(r => r.Client < 0 ? (-1, r.Order) : (r.Client, 0)).Select(own => own.ToList());
}

/// <summary>A client's log-likelihood near some value of δ and β, up to second order.</summary>
internal sealed record LocalQuadratic(double Constant, double[] Slope, double[] Bend)
{
    /// <summary>About <paramref name="aside"/>, written about the fit.</summary>
    public static LocalQuadratic At(
        ClientShiftLikelihood likelihood,
        IReadOnlyList<WatchedRow> own,
        int first,
        double shift,
        double[] aside
    )
    {
        likelihood.MoveToClient(own);
        likelihood.Evaluate(first, shift, aside);
        var size = aside.Length;
        var (constant, slope, bend) = (likelihood.Value, likelihood.Gradient[..size], new double[size * size]);
        for (var j = 0; j < size; j++)
        {
            constant -= likelihood.Gradient[j] * aside[j];
            for (var l = 0; l < size; l++)
            {
                var curve = -likelihood.Hessian[j * likelihood.Size + l];
                bend[j * size + l] = curve;
                slope[j] += curve * aside[l];
                constant -= curve * aside[j] * aside[l] / 2;
            }
        }
        return new LocalQuadratic(constant, slope, bend);
    }
}

/// <summary>The logarithm of the posterior under a supposition, less that of the fit at its peak, up to second order.</summary>
internal sealed class QuadraticSum
{
    private readonly SymmetricFactor _factor;
    private readonly double[] _slope;
    private readonly double[] _bend;
    private double _constant;

    public QuadraticSum(double[] precision)
    {
        var size = (int)Math.Sqrt(precision.Length);
        (_slope, _bend, Peak) = (new double[size], precision, new double[size]);
        _factor = new SymmetricFactor(size);
        if (!_factor.TryFactorize(precision))
            throw new ArgumentException("The covariance of the parameters is not positive definite.", nameof(precision));
    }

    /// <summary>How far δ and β are from the fit's where it is highest.</summary>
    public double[] Peak { get; private set; }

    /// <summary>At that peak, over the fit's at its own: as good as the integrals over δ and β.</summary>
    /// <remarks>
    /// About its own peak one supposition is as narrow as another: there the rows' bends add up to the number of their ends. With the bends
    /// as they are kept here, those of unshifted rows about the fit, the widths would seem to differ and make the integrals worse.
    /// </remarks>
    public double Height { get; private set; }

    public void Replace(LocalQuadratic old, LocalQuadratic anew)
    {
        _constant += anew.Constant - old.Constant;
        for (var i = 0; i < _slope.Length; i++)
            _slope[i] += anew.Slope[i] - old.Slope[i];
        for (var i = 0; i < _bend.Length; i++)
            _bend[i] += anew.Bend[i] - old.Bend[i];
        if (!_factor.TryFactorize(_bend))
            return;
        Peak = (double[])_slope.Clone();
        _factor.Solve(Peak);
        var rise = 0.0;
        for (var i = 0; i < Peak.Length; i++)
            rise += _slope[i] * Peak[i] / 2;
        Height = _constant + rise;
    }
}
