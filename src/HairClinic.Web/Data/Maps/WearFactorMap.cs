namespace HairClinic.Web.Data.Maps;

public sealed class WearFactorMap() : FencedMap<WearFactor>("wear_factors")
{
    protected override void Map(EntityTypeBuilder<WearFactor> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_wear_factors_factor", "factor between 0.2 and 2"));
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.Quantity,
                x.Habit,
            })
            .IsUnique();
    }
}
