namespace HairClinic.Web.Data.Maps;

public sealed class UnitArrivalMap() : FencedMap<UnitArrival>("unit_arrivals")
{
    /// <summary>Of two people who receive one parcel at the same moment the second is refused.</summary>
    public const string EachOnce = "ix_unit_arrivals_practice_id_hair_system_id_number";

    protected override void Map(EntityTypeBuilder<UnitArrival> builder)
    {
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.HairSystemId,
                x.Number,
            })
            .IsUnique()
            .HasDatabaseName(EachOnce);
    }
}
