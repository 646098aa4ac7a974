using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>One unit's life. Dotted from ordered, solid from arrived, ended by retired; predictions are there once there is a model to make them.</summary>
public sealed record WearLane(string Serial, string Kind)
{
    public LocalDate? Ordered { get; init; }
    public LocalDate? Arrived { get; init; }
    public LocalDate? Retired { get; init; }

    /// <summary>Likely arrival, earliest and latest; a single promised day has both alike.</summary>
    public LocalDate? PromisedFrom { get; init; }
    public LocalDate? PromisedTo { get; init; }
    public IReadOnlyList<WearBond> Bonds { get; init; } = [];

    /// <summary>The chance that the unit still wears on a day, from today on; first point 1, never rising.</summary>
    public IReadOnlyList<WearFade> Fade { get; init; } = [];

    /// <summary>The days between which four ends in five will fall.</summary>
    public WearBand? Band { get; init; }
    public LocalDate? ReorderBy { get; init; }

    /// <summary>The bond that holds today.</summary>
    public WearBond? Open => Bonds.FirstOrDefault(bond => bond.RemovedOn is null);
}
