namespace HairClinic.Web.Data.Maps;

public sealed class StoredLeadMap() : FencedMap<StoredLead>("stored_leads")
{
    protected override void Map(EntityTypeBuilder<StoredLead> builder)
    {
        builder.AddReference<StoredLead, UnitKind>(x => x.UnitKindId);
        builder.HasIndex(x => new { x.PracticeId, x.UnitKindId }).IsUnique();
    }
}
