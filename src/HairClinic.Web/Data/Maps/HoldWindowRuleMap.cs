namespace HairClinic.Web.Data.Maps;

public sealed class HoldWindowRuleMap() : FencedMap<HoldWindowRule>("hold_window_rules")
{
    protected override void Map(EntityTypeBuilder<HoldWindowRule> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_hold_window_rules_closes_after_opens", "latest_weeks >= earliest_weeks"));
        builder.AddReference<HoldWindowRule, BaseMaterial>(x => x.BaseMaterialId);
        builder.AddReference<HoldWindowRule, Product>(x => x.AdhesiveId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.BaseMaterialId,
                x.AdhesiveId,
                x.Attachment,
            })
            .IsUnique()
            .AreNullsDistinct(false);
    }
}
