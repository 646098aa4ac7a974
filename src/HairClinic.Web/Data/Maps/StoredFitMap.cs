namespace HairClinic.Web.Data.Maps;

public sealed class StoredFitMap() : FencedMap<StoredFit>("stored_fits")
{
    protected override void Map(EntityTypeBuilder<StoredFit> builder)
    {
        builder.Property(x => x.Notes).HasJsonConversion();
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.Quantity,
            x.FittedAt,
        });
    }
}
