using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>Everything the next order of one client depends on.</summary>
/// <param name="Distribution">Of lives.</param>
/// <param name="Client">What is believed of this client's δ + b, from rows that include the ages of the units in hand; few nodes (<see cref="LifeNodes.Few"/>) are fast.</param>
/// <param name="InHand">Bondable units in house.</param>
/// <param name="InFlight">Orders under way, the soonest expected first.</param>
/// <param name="Lead">Λ* of a new order.</param>
/// <param name="Workshop">The days on which its workshop works.</param>
/// <param name="PreparationDays">From arrival until it can be bonded: inspection, colour, cut-in, waiting for a chair.</param>
public sealed record ReorderInput(
    LifeDistribution Distribution,
    LifeNodes Client,
    IReadOnlyList<UnitInHand> InHand,
    IReadOnlyList<UnitInFlight> InFlight,
    LeadTable Lead,
    WorkshopDays Workshop,
    int PreparationDays
)
{
    /// <summary>The chance of a gap that is accepted.</summary>
    public double Alpha { get; init; } = 0.05;

    /// <summary>Days within which days of a gap are counted.</summary>
    public int HorizonDays { get; init; } = 365;
}
