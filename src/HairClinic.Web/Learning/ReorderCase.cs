using HairClinic.Domain.Replacement;

namespace HairClinic.Web.Learning;

/// <summary>Everything about one client's next order, ready to be asked.</summary>
/// <param name="UnitKindId">What would be ordered.</param>
/// <param name="Each">A new unit of it.</param>
/// <param name="Working">The salon's days.</param>
/// <param name="LifeOfNew">How long a new unit will last.</param>
public sealed record ReorderCase(
    Guid ClientId,
    LocalDate Today,
    Guid UnitKindId,
    ReorderInput Question,
    UnitInHand Each,
    OpeningDays Working,
    LifePrediction LifeOfNew
)
{
    /// <summary>The client's units that the question counts, in its order: first those in hand.</summary>
    public required IReadOnlyList<Guid> InHand { get; init; }

    public required IReadOnlyList<Guid> InFlight { get; init; }

    /// <summary>Bondable for an emergency only: worn out, or kept as such.</summary>
    public required IReadOnlyList<Guid> Emergency { get; init; }

    /// <summary>What is left of each unit in hand.</summary>
    public required IReadOnlyDictionary<Guid, (LifePrediction Life, int WornDays)> Left { get; init; }

    /// <summary>The client's own units behind the model.</summary>
    public required IReadOnlyList<LifeSpell> Lives { get; init; }

    /// <summary>xᵀβ of a new unit.</summary>
    public required double EffectOfNew { get; init; }

    /// <summary>A unit is bonded today.</summary>
    public required bool OnHead { get; init; }

    public ReorderOutlook Outlook(ReorderRule rule) => Outlook(rule, Question);

    /// <param name="question">The client's own, or what it would be if something were done.</param>
    public ReorderOutlook Outlook(ReorderRule rule, ReorderInput question) =>
        NextOrder.Plan(rule, question, Today, UnitKindId, Each, Working) with
        {
            OnHead = OnHead,
        };
}
