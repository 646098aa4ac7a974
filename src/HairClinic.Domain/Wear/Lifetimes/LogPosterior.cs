namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What a fit climbs: the (marginal) log-likelihood plus the logarithm of the priors' densities.</summary>
/// <remarks>
/// Parameters are (δ′, β…, s): δ′ is the intercept at the columns' means, so δ = δ′ − Σ βⱼ·meanⱼ. The priors are those of
/// δ, and are turned accordingly.
/// </remarks>
public sealed class LogPosterior
{
    private readonly PooledLikelihood? _plain;
    private readonly MarginalLikelihood? _marginal;
    private readonly LifePriors _priors;
    private readonly LifetimeFitRows _rows;

    public LogPosterior(LifeDistribution distribution, LifetimeFitRows rows, LifePriors priors)
    {
        if (priors.Coefficients.Count != rows.Names.Length)
            throw new ArgumentException("A prior for each covariate.", nameof(priors));
        (_rows, _priors) = (rows, priors);
        if (priors.LogScale.IsProper)
            LowestLogScale = (LogScaleOfADay = rows.LogScaleOfADay()) - 1 ?? LowestOfIntervals;
        if (rows.ClientStarts.Length > 0 && priors.ClientSpread > 0)
            _marginal = new MarginalLikelihood(distribution, rows, priors.ClientSpread);
        else
            _plain = new PooledLikelihood(distribution, rows);
    }

    public int Size => _rows.Names.Length + 2;

    /// <summary>The value at the parameters; fills gradient and Hessian (row by row).</summary>
    public double Evaluate(double[] parameters, Span<double> gradient, Span<double> hessian)
    {
        var sums = EvaluateWithPriors(parameters);
        sums.Gradient.CopyTo(gradient);
        sums.Hessian.CopyTo(hessian);
        return sums.Value;
    }

    /// <summary>The value at parameters as a fit tells them.</summary>
    internal double ValueAt(double[] told)
    {
        var climbed = (double[])told.Clone();
        for (var j = 0; j < _rows.Means.Length; j++)
            climbed[0] += told[j + 1] * _rows.Means[j];
        return EvaluateWithPriors(climbed).Value;
    }

    /// <summary>The logarithm of the priors' densities.</summary>
    internal double LogPriorDensity(double[] parameters)
    {
        var sums = new LogLikelihoodSums(Size);
        for (var k = 0; k < Size; k++)
            AddPrior(k, parameters, sums);
        return sums.Value;
    }

    /// <summary>Clients' effects are integrated out.</summary>
    internal bool IsMarginal => _marginal is not null;

    /// <summary>Further down no fit goes: the rows fit perfectly.</summary>
    internal double LowestLogScale { get; } = -18;

    /// <summary>Where times noted in whole days can tell no more; null without a prior of s, or where no end is known.</summary>
    internal double? LogScaleOfADay { get; }

    // Where no end is known to the day, nothing draws the spread so far down.
    private const double LowestOfIntervals = -8;

    /// <summary>So many rows that a sample of them shows where to start.</summary>
    internal bool IsLarge => _plain is not null && _rows.Length > 200_000;

    /// <summary>Of a great many rows one block in so many is sample enough.</summary>
    internal const int SampleStride = 16;

    internal LogLikelihoodSums EvaluateWithPriors(double[] parameters, int stride = 1)
    {
        var sums = _plain is null ? _marginal!.Evaluate(parameters) : _plain.Evaluate(parameters, stride);
        for (var k = 0; k < Size; k++)
            AddPrior(k, parameters, sums);
        return sums;
    }

    internal NormalPrior PriorOf(int k) =>
        k == 0 ? _priors.Intercept
        : k == Size - 1 ? _priors.LogScale
        : _priors.Coefficients[k - 1];

    /// <summary>∂(k-th parameter as it is told) / ∂(j-th as it is climbed).</summary>
    internal double ReportedParameterDerivative(int k, int j) =>
        k == j ? 1
        : k == 0 && j < Size - 1 ? -_rows.Means[j - 1]
        : 0;

    internal double ReportedParameter(int k, double[] parameters)
    {
        var value = 0.0;
        for (var j = k; j < (k == 0 ? Size - 1 : k + 1); j++)
            value += ReportedParameterDerivative(k, j) * parameters[j];
        return value;
    }

    private void AddPrior(int k, double[] parameters, LogLikelihoodSums sums)
    {
        var prior = PriorOf(k);
        if (!prior.IsProper)
            return;
        var away = ReportedParameter(k, parameters) - prior.Mean;
        sums.Value += -away * away * prior.Precision / 2 - Math.Log(prior.Spread) - NormalTail.LogRootTwoPi;
        for (var j = 0; j < Size; j++)
        {
            sums.Gradient[j] -= prior.Precision * away * ReportedParameterDerivative(k, j);
            for (var l = 0; l < Size; l++)
                sums.Hessian[j * Size + l] -= prior.Precision * ReportedParameterDerivative(k, j) * ReportedParameterDerivative(k, l);
        }
    }
}
