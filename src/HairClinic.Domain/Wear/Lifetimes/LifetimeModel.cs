using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Fits ln T = m + λ·(δ + b) + xᵀβ + eˢ·σ·ε to spells that ended, went on, or ended within an interval.</summary>
/// <remarks>
/// m, σ and λ are each row's place; b, a client's effect, is integrated out, never maximised: maximising it together with the
/// scale makes every band far too narrow. With flat priors, no clients and plain places this is maximum likelihood.
/// </remarks>
public static class LifetimeModel
{
    public static LifetimeFit Fit(LifeDistribution distribution, LifeRows rows, LifePriors priors)
    {
        var target = new LogPosterior(distribution, rows, priors);
        var start = FitStart.Of(distribution, rows, target);
        if (Hopeless(rows, priors, start) is { } why)
            return LifetimeFit.Without(distribution, rows, why);
        var climb = new NewtonMaximizer(target, start.Spreads);
        climb.From(Near(target, start));
        if (!climb.Converged)
            return LifetimeFit.Without(distribution, rows, Why(climb, rows, priors), climb.Iterations);
        return Build(distribution, rows, priors, target, climb, Notes(rows, priors, start));
    }

    // Of a great many rows a sixteenth leads almost to the top, for a sixteenth of the work. Where it does not, nothing is lost.
    private static double[] Near(LogPosterior target, FitStart start)
    {
        if (!target.IsLarge)
            return start.Parameters;
        var rough = new NewtonMaximizer(target, start.Spreads, LogPosterior.SampleStride);
        rough.From(start.Parameters);
        return rough.Converged ? rough.Parameters : start.Parameters;
    }

    /// <summary>What can be told before climbing: without a prior to lean on, some rows have no highest point.</summary>
    private static FitNote? Hopeless(LifeRows rows, LifePriors priors, FitStart start)
    {
        if (priors.Intercept.IsProper && priors.LogScale.IsProper)
            return start.Entangled > 0 && !priors.Coefficients[start.Entangled - 1].IsProper
                ? FitFailure.Entangled(rows.Names[start.Entangled - 1])
                : null;
        if (rows.Count == 0)
            return FitFailure.NoRows;
        if (rows.Ended == 0)
            return FitFailure.NothingEnded;
        if (Array.TrueForAll(rows.Ends, static end => end == SpellEnd.By))
            return FitFailure.EverythingEndedEarlier;
        return start.Entangled > 0 ? FitFailure.Entangled(rows.Names[start.Entangled - 1]) : null;
    }

    private static FitNote Why(NewtonMaximizer climb, LifeRows rows, LifePriors priors)
    {
        if (priors.AreProper)
            return FitFailure.NotReached;
        var last = climb.Parameters.Length - 1;
        return climb.Mover == last ? FitFailure.NoSpread
            : climb.Mover == 0 ? FitFailure.Separated(LifetimeFit.InterceptName)
            : FitFailure.Separated(rows.Names[climb.Mover - 1]);
    }

    private static List<FitNote> Notes(LifeRows rows, LifePriors priors, FitStart start)
    {
        var notes = new List<FitNote>();
        if (rows.Count == 0)
            notes.Add(FitNote.NoRows);
        else if (rows.Ended == 0)
            notes.Add(FitNote.NothingEnded);
        else if (Array.TrueForAll(rows.Ends, static end => end == SpellEnd.By))
            notes.Add(FitNote.EverythingEndedEarlier);
        if (rows.Count > 0 && start.Entangled > 0)
            notes.Add(FitNote.AssumedOf(rows.Names[start.Entangled - 1]));
        if (priors.ClientSpread > 0 && rows.ClientStarts.Length == 2)
            notes.Add(FitNote.OneClient);
        return notes;
    }

    private static LifetimeFit Build(
        LifeDistribution distribution,
        LifeRows rows,
        LifePriors priors,
        LogPosterior target,
        NewtonMaximizer climb,
        List<FitNote> notes
    )
    {
        var size = target.Size;
        if (ScaledCholesky.Of(Array.ConvertAll(climb.Sums.Hessian, static h => -h), size, 0, out _) is not { } bend)
            return LifetimeFit.Without(distribution, rows, FitFailure.NotReached, climb.Iterations);
        return new LifetimeFit
        {
            Distribution = distribution,
            Names = [LifetimeFit.InterceptName, .. rows.Names],
            Coefficients = [.. Enumerable.Range(0, size - 1).Select(k => target.Describe(k, climb.Parameters))],
            LogScale = climb.Parameters[^1],
            Covariance = Turned(bend.Inverse(), target),
            LogLikelihood = climb.Sums.Value - target.PriorValue(climb.Parameters),
            LogPosterior = climb.Sums.Value,
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
                    if (target.Turn(k, i) is var left and not 0)
                    {
                        for (var j = 0; j < size; j++)
                            turned[k, l] += left * inverse[i * size + j] * target.Turn(l, j);
                    }
                }
            }
        }
        return turned;
    }
}
