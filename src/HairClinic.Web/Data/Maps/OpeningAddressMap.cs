namespace HairClinic.Web.Data.Maps;

public sealed class OpeningAddressMap() : FencedMap<OpeningAddress>("opening_addresses")
{
    protected override void Map(EntityTypeBuilder<OpeningAddress> builder)
    {
        builder.AddReference<OpeningAddress, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.HasIndex(x => new { x.PracticeId, x.Email });
        builder
            .HasIndex(x => new { x.PracticeId, x.GuardianId })
            .IsUnique()
            .HasFilter("ended_at is null")
            .HasDatabaseName("ux_opening_addresses_guardian");
        builder
            .HasIndex(x => new { x.PracticeId, x.ClientId }, "ux_opening_addresses_own")
            .IsUnique()
            .HasFilter("guardian_id is null and ended_at is null")
            .HasDatabaseName("ux_opening_addresses_own");
        builder.HasIndex(x => new { x.PracticeId, x.LinkHash }).IsUnique();
        // Almost none at any time: the work loop looks every few seconds.
        builder
            .HasIndex(x => x.PracticeId)
            .HasFilter("told_at is null or ended_at is not null and end_told_at is null")
            .HasDatabaseName("ix_opening_addresses_untold");
    }
}
