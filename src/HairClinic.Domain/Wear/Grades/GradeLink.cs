using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>How grades follow from a unit's life, one set a practice.</summary>
/// <remarks>
/// A unit that lasts T reaches grade k (1 or 2) at ln T_k = ln T + c_k·exp(ψ·v) + ω_k·η_k, with v and η_k standard normal and v shared by
/// both grades. What is written down then is with chance q a copy of the entry before it, else misread with chance e. Shifts of single
/// graders are left out.
/// </remarks>
/// <param name="SlightShift">c₁, below c₂: how much of ln T is left when grade 1 is reached.</param>
/// <param name="FairShift">c₂, below 0.</param>
/// <param name="Unevenness">ψ, at least 0: how much units differ in both together.</param>
/// <param name="SlightLogSpread">ln ω₁.</param>
/// <param name="FairLogSpread">ln ω₂.</param>
/// <param name="MisreadLogit">ln(e / (1 − e)).</param>
/// <param name="CopyLogit">ln(q / (1 − q)).</param>
public sealed record GradeLink(
    double SlightShift,
    double FairShift,
    double Unevenness,
    double SlightLogSpread,
    double FairLogSpread,
    double MisreadLogit,
    double CopyLogit
)
{
    internal const int Size = 7;

    private static readonly NormalPrior[] Priors =
    [
        new(-0.80, 0.3),
        new(-0.29, 0.2),
        new(0.15, 0.15),
        new(-1.39, 0.4),
        new(-1.60, 0.4),
        new(-3, 0.7),
        new(-1.1, 0.8),
    ];

    /// <summary>What is assumed before a practice's own grades say otherwise.</summary>
    public static GradeLink Usual { get; } = FromParameters([.. Priors.Select(prior => prior.Mean)]);

    /// <summary>e: the chance that what is written down is not what is there.</summary>
    public double Misread => Logistic(MisreadLogit);

    /// <summary>q: the chance that an entry copies the one before it.</summary>
    public double Copied => Logistic(CopyLogit);

    /// <summary>c₁ &lt; c₂ &lt; 0 and ψ ≥ 0, all finite.</summary>
    public bool IsValid => Parameters().All(double.IsFinite) && SlightShift < FairShift && FairShift < 0 && Unevenness >= 0;

    /// <summary>Of the priors, but for the constant that the constraints on c and ψ add.</summary>
    public double LogPriorDensity =>
        Parameters().Zip(Priors, (value, prior) => -Math.Pow((value - prior.Mean) / prior.Spread, 2) / 2 - Math.Log(prior.Spread)).Sum()
        - Size * NormalTail.LogRootTwoPi;

    internal static ReadOnlySpan<NormalPrior> PriorsInOrder => Priors;

    /// <summary>As they are stored, in the order above.</summary>
    public double[] Parameters() => [SlightShift, FairShift, Unevenness, SlightLogSpread, FairLogSpread, MisreadLogit, CopyLogit];

    /// <param name="values">From <see cref="Parameters"/>.</param>
    public static GradeLink FromParameters(ReadOnlySpan<double> values) =>
        new(values[0], values[1], values[2], values[3], values[4], values[5], values[6]);

    private static double Logistic(double x) => 1 / (1 + Math.Exp(-x));
}
