using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>A bondable unit in house: its remaining life.</summary>
/// <param name="Centre">m + xᵀβ of ln T.</param>
/// <param name="Loading">How much of the client's δ + b it takes on.</param>
/// <param name="Tau">eˢ·σ.</param>
/// <param name="WornDays">Worn until today.</param>
public readonly record struct RemainingLife(double Centre, double Loading, double Tau, int WornDays)
{
    /// <summary>What else may be true of it; null where <see cref="Tau"/> says all.</summary>
    public LifeShape? Shape { get; init; }

    /// <summary>Its own clock, where it was repaired; read with <see cref="Shape"/> only.</summary>
    public RepairClock Clock { get; init; }

    /// <summary>What its take-downs' grades say of its end; null where they say nothing.</summary>
    public GradeWeights? Grades { get; init; }

    // Narrow enough to act as a fixed number of days, wide enough for the daily grid.
    private const double Narrow = 0.02;

    /// <summary>Hair for a fixed number of days, as a repair buys it or a loan gives it.</summary>
    /// <param name="days">1 or more.</param>
    public static RemainingLife OfDays(int days) => new(Math.Log(days), 0, Narrow, 0);
}

/// <summary>What one client's units share: b, and what is not known of the centre of the unit it was made for.</summary>
/// <param name="Population">With the doubt of that unit (<see cref="PopulationParameters.ForRow"/>).</param>
/// <param name="Nodes">Its distribution.</param>
/// <remarks>
/// One effect serves for units of different bases and makers: what is not known of each is taken to move with the others', so a unit takes
/// on as much of the effect as gives it its own variance, about its own centre.
/// </remarks>
public sealed record SharedEffect(PopulationParameters Population, ClientEffectNodes Nodes)
{
    /// <param name="row">The population with the doubt of this unit.</param>
    /// <param name="covariates">Its xᵀβ.</param>
    public RemainingLife Take(
        PopulationParameters row,
        WindowPrior window,
        double covariates,
        int wornDays,
        LifeShape? shape,
        RepairClock clock = default,
        GradeWeights? grades = null
    )
    {
        var (mean, variance) = Nodes.Moments();
        var more = row.PracticeVariance - Population.PracticeVariance;
        var ratio = more == 0 ? 1 : Math.Sqrt(Math.Max(0, 1 + more / variance));
        return new RemainingLife(
            window.Centre + covariates + window.Width * (1 - ratio) * mean,
            window.Width * ratio,
            window.Sigma * Math.Exp(row.LogScale),
            wornDays
        )
        {
            Shape = shape,
            Clock = clock,
            Grades = grades,
        };
    }
}
