namespace HairClinic.Web.Data.Maps;

public sealed class RetentionRuleMap() : FencedMap<RetentionRule>("retention_rules")
{
    protected override void Map(EntityTypeBuilder<RetentionRule> builder) =>
        builder.HasIndex(x => new { x.PracticeId, x.Subject }).IsUnique();
}
