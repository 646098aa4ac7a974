namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A fit as it was stored: what predictions read until the next one, with what it was made from.</summary>
public sealed class StoredFit : PracticeOwned
{
    /// <summary>Goes up with every change of the model that makes an older fit mean something else.</summary>
    public const int CurrentModel = 1;

    private StoredFit() { }

    /// <param name="columns">The covariates' names, in the order of the coefficients after the first.</param>
    /// <param name="clients">Different clients among the spells.</param>
    /// <param name="leftOut">Spells left out until somebody says whether their dates are right; null where nobody looked.</param>
    public StoredFit(
        Guid id,
        LifetimeKind quantity,
        LifetimeFit fit,
        int clients,
        LocalDate dataCut,
        Instant fittedAt,
        int? leftOut = null
    )
    {
        Id = id;
        Quantity = quantity;
        ModelVersion = CurrentModel;
        DataCut = dataCut;
        FittedAt = fittedAt;
        Distribution = fit.Distribution;
        Columns = [.. fit.Names.Skip(1)];
        Coefficients = [.. fit.Coefficients];
        Covariance = [.. fit.Covariance.Cast<double>()];
        LogScale = Finite(fit.LogScale);
        ClientSpread = Finite(fit.ClientSpread);
        LogLikelihood = Finite(fit.LogLikelihood);
        LogPosterior = Finite(fit.LogPosterior);
        Iterations = fit.Iterations;
        Converged = fit is { Converged: true, Missing: null };
        Spells = fit.Count;
        Ended = fit.Ended;
        Clients = clients;
        LeftOut = leftOut;
        Notes = fit.Missing is { } why ? [why] : [.. fit.Notes];
    }

    public LifetimeKind Quantity { get; private set; }
    public int ModelVersion { get; private set; }

    /// <summary>The last day whose records it knew.</summary>
    public LocalDate DataCut { get; private set; }

    public Instant FittedAt { get; private set; }
    public LifeDistribution Distribution { get; private set; }
    public string[] Columns { get; private set; } = [];

    /// <summary>δ, then β in the order of <see cref="Columns"/>.</summary>
    public double[] Coefficients { get; private set; } = [];

    /// <summary>Of the coefficients and s, row by row.</summary>
    public double[] Covariance { get; private set; } = [];

    /// <summary>s; null without an estimate.</summary>
    public double? LogScale { get; private set; }

    public double? ClientSpread { get; private set; }
    public double? LogLikelihood { get; private set; }
    public double? LogPosterior { get; private set; }
    public int Iterations { get; private set; }

    /// <summary>Predictions use it; where it is not, what was assumed.</summary>
    public bool Converged { get; private set; }

    public int Spells { get; private set; }
    public int Ended { get; private set; }
    public int Clients { get; private set; }

    /// <summary>Spells left out until somebody says whether their dates are right; null where nobody looked (<see cref="OutlyingSpells"/>).</summary>
    public int? LeftOut { get; private set; }

    /// <summary>What a reader of it should know.</summary>
    public IReadOnlyList<LifetimeFitNote> Notes { get; private set; } = [];

    /// <summary>Standard error of a parameter: δ, β in order, then s.</summary>
    public double StdError(int parameter) => Math.Sqrt(Covariance[parameter * (Coefficients.Length + 2)]);

    /// <exception cref="InvalidOperationException">There is no estimate.</exception>
    public PopulationParameters Population() =>
        Converged
            ? new(Distribution, LogScale!.Value, Coefficients[1..], Coefficients[0], Covariance[0], ClientSpread!.Value, Spells)
            : throw new InvalidOperationException("This fit has no estimate.");

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
