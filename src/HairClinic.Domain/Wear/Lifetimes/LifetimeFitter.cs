using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Fits ln T = m + λ·(δ + b) + xᵀβ + eˢ·σ·ε to spells that ended, went on, or ended within an interval.</summary>
/// <remarks>
/// m, σ and λ are each row's place; b, a client's effect, is integrated out, never maximised: maximising it together with the
/// scale makes every band far too narrow. With flat priors, no clients and plain places this is maximum likelihood.
/// </remarks>
public static class LifetimeFitter
{
    public static LifetimeFit Fit(LifeDistribution distribution, LifetimeFitRows rows, LifePriors priors) =>
        Fit(distribution, rows, priors, toTheDay: false);

    /// <summary>Two models of the same rows, to be compared: either both take an end as known to the day only, or neither.</summary>
    public static (LifetimeFit First, LifetimeFit Second) FitToCompare(
        LifeDistribution distribution,
        (LifetimeFitRows Rows, LifePriors Priors) first,
        (LifetimeFitRows Rows, LifePriors Priors) second
    )
    {
        var fits = (First: Fit(distribution, first.Rows, first.Priors), Second: Fit(distribution, second.Rows, second.Priors));
        if (fits.First.EndsToTheDay && !fits.Second.EndsToTheDay)
            fits.Second = Fit(distribution, second.Rows.KnownToTheDay(), second.Priors, toTheDay: true);
        else if (fits.Second.EndsToTheDay && !fits.First.EndsToTheDay)
            fits.First = Fit(distribution, first.Rows.KnownToTheDay(), first.Priors, toTheDay: true);
        return fits;
    }

    private static LifetimeFit Fit(LifeDistribution distribution, LifetimeFitRows rows, LifePriors priors, bool toTheDay)
    {
        var target = new LogPosterior(distribution, rows, priors);
        var start = LifetimeFitStart.Guess(distribution, rows, target);
        if (Hopeless(rows, priors, start) is { } why)
            return LifetimeFit.NoEstimate(distribution, rows, why);
        var climb = new NewtonMaximizer(target, start.Spreads);
        climb.MaximizeFrom(Near(target, start));
        // Many ends on the very same day draw the spread down as far as its prior lets them, which means nothing: no finer than they were noted.
        if (climb.Parameters[^1] < target.LogScaleOfADay)
            return Fit(distribution, rows.KnownToTheDay(), priors, toTheDay: true);
        if (!climb.Converged)
            return LifetimeFit.NoEstimate(distribution, rows, Why(climb, target, rows, priors), climb.Iterations);
        return Build(distribution, rows, priors, target, climb, Notes(rows, priors, start, toTheDay));
    }

    // Of a great many rows a sixteenth leads almost to the top, for a sixteenth of the work. Where it does not, nothing is lost.
    private static double[] Near(LogPosterior target, LifetimeFitStart start)
    {
        if (!target.IsLarge)
            return start.Parameters;
        var rough = new NewtonMaximizer(target, start.Spreads, LogPosterior.SampleStride);
        rough.MaximizeFrom(start.Parameters);
        return rough.Converged ? rough.Parameters : start.Parameters;
    }

    /// <summary>What can be told before climbing: without a prior to lean on, some rows have no highest point.</summary>
    private static LifetimeFitNote? Hopeless(LifetimeFitRows rows, LifePriors priors, LifetimeFitStart start)
    {
        if (rows.BeyondNumbers is { } covariate)
            return LifetimeFitFailureNotes.BeyondNumbers(covariate);
        if (priors.Intercept.IsProper && priors.LogScale.IsProper)
            return start.Entangled > 0 && !priors.Coefficients[start.Entangled - 1].IsProper
                ? LifetimeFitFailureNotes.Collinear(rows.Names[start.Entangled - 1])
                : null;
        if (rows.Count == 0)
            return LifetimeFitFailureNotes.NoRows;
        if (rows.Ended == 0)
            return LifetimeFitFailureNotes.NothingEnded;
        if (Array.TrueForAll(rows.Ends, static end => end == SpellEnd.By))
            return LifetimeFitFailureNotes.EverythingEndedEarlier;
        return start.Entangled > 0 ? LifetimeFitFailureNotes.Collinear(rows.Names[start.Entangled - 1]) : null;
    }

    private static LifetimeFitNote Why(NewtonMaximizer climb, LogPosterior target, LifetimeFitRows rows, LifePriors priors)
    {
        var last = climb.Parameters.Length - 1;
        if (priors.AreProper)
            return climb.Parameters[last] < target.LowestLogScale
                ? LifetimeFitFailureNotes.SpreadTooSmall
                : LifetimeFitFailureNotes.NotReached;
        return climb.Mover == last ? LifetimeFitFailureNotes.NoSpread
            : climb.Mover == 0 ? LifetimeFitFailureNotes.Separated(LifetimeFit.InterceptName)
            : LifetimeFitFailureNotes.Separated(rows.Names[climb.Mover - 1]);
    }

    private static List<LifetimeFitNote> Notes(LifetimeFitRows rows, LifePriors priors, LifetimeFitStart start, bool toTheDay)
    {
        var notes = new List<LifetimeFitNote>();
        if (rows.Count == 0)
            notes.Add(LifetimeFitNote.NoRows);
        else if (rows.Ended == 0)
            notes.Add(LifetimeFitNote.NothingEnded);
        else if (Array.TrueForAll(rows.Ends, static end => end == SpellEnd.By))
            notes.Add(LifetimeFitNote.EverythingEndedEarlier);
        if (rows.Count > 0 && start.Entangled > 0)
            notes.Add(LifetimeFitNote.EffectAssumed(rows.Names[start.Entangled - 1]));
        if (priors.ClientSpread > 0 && rows.ClientStarts.Length == 2)
            notes.Add(LifetimeFitNote.OneClient);
        if (toTheDay)
            notes.Add(LifetimeFitNote.EndsToTheDay);
        return notes;
    }

    private static LifetimeFit Build(
        LifeDistribution distribution,
        LifetimeFitRows rows,
        LifePriors priors,
        LogPosterior target,
        NewtonMaximizer climb,
        List<LifetimeFitNote> notes
    )
    {
        var size = target.Size;
        if (ScaledCholesky.TryFactorize(Array.ConvertAll(climb.Sums.Hessian, static h => -h), size, 0, out _) is not { } bend)
            return LifetimeFit.NoEstimate(distribution, rows, LifetimeFitFailureNotes.NotReached, climb.Iterations);
        return new LifetimeFit
        {
            Distribution = distribution,
            Names = [LifetimeFit.InterceptName, .. rows.Names],
            Coefficients = [.. Enumerable.Range(0, size - 1).Select(k => target.ReportedParameter(k, climb.Parameters))],
            LogScale = climb.Parameters[^1],
            Covariance = Turned(bend.Inverse(), target),
            LogLikelihood = climb.Sums.Value - target.LogPriorDensity(climb.Parameters),
            LogPosterior = climb.Sums.Value,
            LogEvidence = climb.Sums.Value - bend.LogDeterminant / 2,
            ClientSpread = rows.ClientStarts.Length > 0 ? priors.ClientSpread : 0,
            Iterations = climb.Iterations,
            Converged = true,
            Count = rows.Count,
            Ended = rows.Ended,
            Notes = notes,
        };
    }

    // From the parameters as they were climbed to those that are told: only the intercept differs.
    private static double[,] Turned(double[] inverse, LogPosterior target)
    {
        var size = target.Size;
        var turned = new double[size, size];
        for (var k = 0; k < size; k++)
        {
            for (var l = 0; l < size; l++)
            {
                for (var i = 0; i < size; i++)
                {
                    if (target.ReportedParameterDerivative(k, i) is var left and not 0)
                    {
                        for (var j = 0; j < size; j++)
                            turned[k, l] += left * inverse[i * size + j] * target.ReportedParameterDerivative(l, j);
                    }
                }
            }
        }
        return turned;
    }
}

/// <summary>Why a likelihood without priors has no highest point, in plain sentences.</summary>
internal static class LifetimeFitFailureNotes
{
    public static LifetimeFitNote NoRows { get; } = new("There is no estimate: no row tells anything.");

    public static LifetimeFitNote NothingEnded { get; } =
        new("There is no estimate: nothing has ended, so times could be as long as one likes.");

    public static LifetimeFitNote EverythingEndedEarlier { get; } =
        new("There is no estimate: nothing is known to have gone on to any time, so times could be as short as one likes.");

    public static LifetimeFitNote NoSpread { get; } =
        new("There is no estimate: the rows fit perfectly, so their spread could be as small as one likes.");

    public static LifetimeFitNote SpreadTooSmall { get; } =
        new("There is no estimate: the rows fit so nearly perfectly that their spread is too small to calculate with.");

    public static LifetimeFitNote NotReached { get; } = new("There is no estimate: the search for it did not settle.");

    public static LifetimeFitNote BeyondNumbers(string covariate) =>
        new(
            "There is no estimate: the values of {0} are too far apart, or too close together, to calculate with. Give them in another unit.",
            covariate
        );

    public static LifetimeFitNote Collinear(string covariate) =>
        new("There is no estimate: {0} is the same on every row, or follows from the other covariates.", covariate);

    public static LifetimeFitNote Separated(string parameter) =>
        new("There is no estimate: the rows leave {0} without bound, because among those it tells apart nothing ended.", parameter);
}

/// <summary>Something a reader of a fit should know, in a plain sentence with its arguments ({0}).</summary>
public sealed record LifetimeFitNote(string Sentence, string? Argument = null)
{
    public static readonly LifetimeFitNote NothingEnded = new(
        "No end has been seen yet: what is shown is what was assumed, moved by those that went on."
    );
    public static readonly LifetimeFitNote EverythingEndedEarlier = new(
        "Every end is known only as \"by then\": what is shown is what was assumed, moved by how early those were."
    );
    public static readonly LifetimeFitNote NoRows = new("Nothing has been seen yet: what is shown is what was assumed.");
    public static readonly LifetimeFitNote EndsToTheDay = new(
        "So many ended after the very same number of days that each end counts as known to the day only, half a day either way."
    );
    public static readonly LifetimeFitNote OneClient = new("All rows are one client's: how clients differ is what was assumed.");

    public static LifetimeFitNote EffectAssumed(string covariate) =>
        new("The rows cannot tell the effect of {0}: it is what was assumed.", covariate);

    public string Text => Argument is null ? Sentence : Sentence.Replace("{0}", Argument, StringComparison.Ordinal);
}

/// <summary>A normal prior.</summary>
public readonly record struct NormalPrior(double Mean, double Spread)
{
    public static readonly NormalPrior Flat = new(0, double.PositiveInfinity);

    public bool IsProper => double.IsFinite(Spread);

    /// <summary>1 / variance; 0 for a flat prior.</summary>
    public double Precision => IsProper ? 1 / (Spread * Spread) : 0;

    /// <summary>A practice's factor row for a covariate: it multiplies the expected time by this much.</summary>
    public static NormalPrior OfFactor(double factor) => new(Math.Log(factor), 0.35);
}

/// <summary>Normal priors of the few population parameters; an infinite spread is a flat prior.</summary>
/// <param name="Intercept">Of δ, the practice's own shift of ln T.</param>
/// <param name="Coefficients">Of β, one for each covariate.</param>
/// <param name="LogScale">Of s, the logarithm of the factor on each window's σ.</param>
/// <param name="ClientSpread">Standard deviation of a client's effect b; 0 where clients do not differ.</param>
public sealed record LifePriors(
    NormalPrior Intercept,
    IReadOnlyList<NormalPrior> Coefficients,
    NormalPrior LogScale,
    double ClientSpread = 0
)
{
    /// <summary>s ~ N(0, 0.4²).</summary>
    public static readonly NormalPrior UsualLogScale = new(0, 0.4);

    /// <summary>β ~ N(0, 0.35²), where the practice has no factor row of its own.</summary>
    public static readonly NormalPrior UsualCoefficient = new(0, 0.35);

    /// <summary>Plain maximum likelihood.</summary>
    public static LifePriors Flat(int covariates) =>
        new(NormalPrior.Flat, [.. Enumerable.Repeat(NormalPrior.Flat, covariates)], NormalPrior.Flat);

    /// <summary>Every parameter has a prior of its own, so that there is always an answer.</summary>
    public bool AreProper => Intercept.IsProper && LogScale.IsProper && Coefficients.All(c => c.IsProper);
}
