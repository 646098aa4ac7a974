using HairClinic.Domain.Wear.Grades;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A fit as it was stored: what predictions read until the next one, with what it was made from.</summary>
public sealed class StoredFit : PracticeOwned
{
    /// <summary>Goes up with every change of the model that makes an older fit mean something else.</summary>
    public const int CurrentModel = 1;

    private DudDrop? _dudDrop;

    private StoredFit() { }

    /// <param name="columns">The covariates' names, in the order of the coefficients after the first.</param>
    /// <param name="clients">Different clients among the spells.</param>
    public StoredFit(Guid id, LifetimeKind quantity, LifetimeFit fit, int clients, LocalDate dataCut, Instant fittedAt)
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
        Notes = fit.Missing is { } why ? [why] : [.. fit.Notes];
    }

    /// <param name="units">Lives, with duds and repairs.</param>
    public StoredFit(Guid id, UnitLifeFit units, int clients, LocalDate dataCut, Instant fittedAt)
        : this(id, LifetimeKind.Life, units.Fit, clients, dataCut, fittedAt)
    {
        (RepairRate, RepairChance, OtherDudShare) = (units.RepairRate, units.RepairChance, units.OtherDudShare);
        DudKinds = [.. units.DudShares.Keys];
        DudShares = [.. units.DudShares.Values];
        (DudUsualDrop, DudDropSpread, EffectSpread) = (units.DudDrop.Usual, units.DudDrop.Spread, units.EffectSpread);
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

    /// <summary>κ of units' lives: after a repair a worn day counts as eᵏ.</summary>
    public double RepairRate { get; private set; }

    /// <summary>ρ: the chance that a unit is repaired before it is worn out.</summary>
    public double RepairChance { get; private set; }

    /// <summary>Kinds of which units ended, and the share of duds among each.</summary>
    public Guid[] DudKinds { get; private set; } = [];

    public double[] DudShares { get; private set; } = [];

    /// <summary>Of kinds not among them.</summary>
    public double OtherDudShare { get; private set; }

    /// <summary>How much lower ln T of a dud lies, and how that differs from dud to dud (<see cref="DudDrop"/>).</summary>
    public double DudUsualDrop { get; private set; } = DudDrop.Unlearnt.Usual;

    public double DudDropSpread { get; private set; } = DudDrop.Unlearnt.Spread;

    /// <summary>How much bases and workshops differ: the spread of their effects on lives.</summary>
    public double EffectSpread { get; private set; } = LifePriors.UsualCoefficient.Spread;

    /// <summary>Spells left out until somebody says whether their dates are right; null where nobody looked (<see cref="OutlyingSpells"/>).</summary>
    public int? LeftOut { get; private set; }

    /// <summary>The parameters of the practice's <see cref="GradeLink"/>, in its order; empty before one was learnt.</summary>
    public double[] GradeLinkParameters { get; private set; } = [];

    /// <summary>The last day whose grades it knew.</summary>
    public LocalDate? GradesLearntOn { get; private set; }

    /// <summary>Units with grades whose end was known then.</summary>
    public int GradedEnded { get; private set; }

    /// <summary>How much likelier what came was with the grades than without, as a logarithm.</summary>
    public double GradeEvidence { get; private set; }

    /// <summary>What a reader of it should know.</summary>
    public IReadOnlyList<LifetimeFitNote> Notes { get; private set; } = [];

    /// <summary>The practice's grades tell of lives: they are used.</summary>
    public bool GradesTell => GradeLinkParameters.Length > 0 && new GradeGate(GradedEnded, GradeEvidence).IsOpen;

    /// <summary>How grades follow from lives here; null where they do not tell.</summary>
    public GradeLink? GradeLink => GradesTell ? GradeLink.FromParameters(GradeLinkParameters) : null;

    public void RecordGrades(GradeLink link, GradeGate gate, LocalDate dataCut) =>
        (GradeLinkParameters, GradesLearntOn, GradedEnded, GradeEvidence) = (link.Parameters(), dataCut, gate.Ended, gate.Evidence);

    /// <summary>What another fit knew of grades.</summary>
    public void KeepGrades(StoredFit other) =>
        (GradeLinkParameters, GradesLearntOn, GradedEnded, GradeEvidence) = (
            other.GradeLinkParameters,
            other.GradesLearntOn,
            other.GradedEnded,
            other.GradeEvidence
        );

    public void RecordLeftOut(int spells) => LeftOut = spells;

    /// <summary>How much shorter a dud lasts.</summary>
    public DudDrop DudDrop => _dudDrop ??= new DudDrop(DudUsualDrop, DudDropSpread);

    /// <summary>What may befall a unit of a kind.</summary>
    public UnitCourses CoursesOf(Guid unitKindId) =>
        new(Array.IndexOf(DudKinds, unitKindId) is >= 0 and var at ? DudShares[at] : OtherDudShare, RepairRate, RepairChance)
        {
            Drop = DudDrop,
        };

    /// <summary>Standard error of a parameter: δ, β in order, then s.</summary>
    public double StdError(int parameter) => Math.Sqrt(Covariance[parameter * (Coefficients.Length + 2)]);

    /// <exception cref="InvalidOperationException">There is no estimate.</exception>
    public PopulationParameters Population() =>
        Converged
            ? new(Distribution, LogScale!.Value, Coefficients[1..], Coefficients[0], Covariance[0], ClientSpread!.Value, Spells)
            {
                Covariance = Covariance,
            }
            : throw new InvalidOperationException("This fit has no estimate.");

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
