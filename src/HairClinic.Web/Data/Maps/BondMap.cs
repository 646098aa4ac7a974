namespace HairClinic.Web.Data.Maps;

public sealed class BondMap() : FencedMap<Bond>("bonds")
{
    public const string OpenPerUnit = "ux_bonds_open_per_unit";
    public const string OpenPerHead = "ux_bonds_open_per_head";

    /// <summary>The filter that leaves out bonds whose log was taken back; see <see cref="ClinicDb.IncludingTakenBack{T}"/>.</summary>
    public const string Standing = "standing";
    private const string OpenLifted = "ix_bonds_open_lifted";

    protected override void Map(EntityTypeBuilder<Bond> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_bonds_closes_after_opens", "closes_on >= opens_on"));
        builder.ToTable(t => t.HasCheckConstraint("ck_bonds_removed_after_applied", "removed_on >= applied_on"));
        builder.Ignore(x => x.IsOpen);
        builder.Ignore(x => x.IsDueForTakeDown);
        builder.HasQueryFilter(Standing, x => x.RemovedBecause == null || x.RemovedBecause != RemovalReason.TakenBack);
        builder.Property(x => x.DueReasons).HasColumnType("jsonb").HasConversion(JsonColumns.DueReasons, JsonColumns.DueReasonsComparer);
        builder.ComplexProperty(
            x => x.Lift,
            l =>
            {
                l.Property(x => x!.ReportedOn).HasColumnName("lift_reported_on");
                l.Property(x => x!.LiftedOn).HasColumnName("lifted_on");
                l.Property(x => x!.EarliestOn).HasColumnName("lift_earliest_on");
                l.Property(x => x!.LatestOn).HasColumnName("lift_latest_on");
                l.Property(x => x!.Zone).HasColumnName("lift_zone");
                l.Property(x => x!.SpotFixed).HasColumnName("lift_spot_fixed");
            }
        );
        builder.AddReference<Bond, HairSystem>(x => x.HairSystemId);
        builder.AddReference<Bond, Client>(x => x.ClientId);
        builder.AddReference<Bond, Visit>(x => x.VisitId);
        builder.AddReference<Bond, Person>(x => x.AppliedBy);
        // One open bond per unit and per head: the database refuses the second.
        builder
            .HasIndex(x => new { x.PracticeId, x.HairSystemId })
            .IsUnique()
            .HasFilter("removed_on is null")
            .HasDatabaseName(OpenPerUnit);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId }).IsUnique().HasFilter("removed_on is null").HasDatabaseName(OpenPerHead);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.ClosesOn,
                x.Id,
            })
            .HasFilter("removed_on is null")
            .HasDatabaseName("ix_bonds_open_closes_on");
        // The few whose edge came up, wherever their windows lie.
        builder
            .HasIndex(
                x => new
                {
                    x.PracticeId,
                    x.ClosesOn,
                    x.Id,
                },
                OpenLifted
            )
            .HasFilter("removed_on is null and lift_reported_on is not null")
            .HasDatabaseName(OpenLifted);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.HairSystemId,
            x.AppliedOn,
        });
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.AppliedOn,
        });
        builder.AddChildren(x => x.Products, (BondProduct p) => p.BondId);
    }
}
