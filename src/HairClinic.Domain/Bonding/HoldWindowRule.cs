namespace HairClinic.Domain.Bonding;

/// <summary>
/// The practice's hold window for a base, an adhesive and an attachment, in calendar weeks. A null
/// part means any; the rule that names most parts wins.
/// </summary>
public sealed class HoldWindowRule : PracticeOwned
{
    private HoldWindowRule() { }

    public HoldWindowRule(Guid id, int earliestWeeks, int latestWeeks)
    {
        Id = id;
        Edit(null, null, null, earliestWeeks, latestWeeks);
    }

    public Guid? BaseMaterialId { get; private set; }
    public Guid? AdhesiveId { get; private set; }
    public Attachment? Attachment { get; private set; }
    public int EarliestWeeks { get; private set; }
    public int LatestWeeks { get; private set; }

    /// <exception cref="Refusal">The window closes before it opens, or lies outside 1–26 weeks.</exception>
    public void Edit(Guid? baseMaterialId, Guid? adhesiveId, Attachment? attachment, int earliestWeeks, int latestWeeks)
    {
        if (earliestWeeks < 1 || latestWeeks < earliestWeeks || latestWeeks > 26)
            throw new Refusal("A hold window opens after at least one week and closes no earlier, within 26 weeks.");
        BaseMaterialId = baseMaterialId;
        AdhesiveId = adhesiveId;
        Attachment = attachment;
        EarliestWeeks = earliestWeeks;
        LatestWeeks = latestWeeks;
    }

    /// <summary>How closely this rule fits; null when it does not apply.</summary>
    public int? MatchScore(Guid baseMaterialId, Guid? adhesiveId, Attachment attachment)
    {
        if (BaseMaterialId is not null && BaseMaterialId != baseMaterialId)
            return null;
        if (AdhesiveId is not null && AdhesiveId != adhesiveId)
            return null;
        if (Attachment is not null && Attachment != attachment)
            return null;
        return (BaseMaterialId is null ? 0 : 4) + (AdhesiveId is null ? 0 : 2) + (Attachment is null ? 0 : 1);
    }

    /// <summary>The rule that fits best; a practice always has one that fits anything.</summary>
    /// <exception cref="Refusal">No rule applies.</exception>
    public static HoldWindowRule Choose(IEnumerable<HoldWindowRule> rules, Guid baseMaterialId, Guid? adhesiveId, Attachment attachment) =>
        rules
            .Select(rule => (Rule: rule, Fit: rule.MatchScore(baseMaterialId, adhesiveId, attachment)))
            .Where(r => r.Fit is not null)
            .OrderByDescending(r => r.Fit)
            .ThenBy(r => r.Rule.EarliestWeeks)
            .Select(r => r.Rule)
            .FirstOrDefault()
        ?? throw new Refusal("No hold window fits this base and adhesive. Add one under Practice, Hold windows.");
}

/// <summary>How a unit is held to the head.</summary>
public enum Attachment
{
    Liquid,
    Tape,
    Mixed,
    Clips,
}
