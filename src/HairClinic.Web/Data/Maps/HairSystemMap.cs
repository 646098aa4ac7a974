namespace HairClinic.Web.Data.Maps;

public sealed class HairSystemMap() : FencedMap<HairSystem>("hair_systems")
{
    public const string OneSerial = "ix_hair_systems_practice_id_serial";

    protected override void Map(EntityTypeBuilder<HairSystem> builder)
    {
        builder.ComplexProperty(x => x.Dates, d => ColumnsOf<UnitDates>(d));
        builder.Refers<HairSystem, Client>(x => x.ClientId);
        builder.Refers<HairSystem, UnitKind>(x => x.UnitKindId);
        builder.Refers<HairSystem, Salon>(x => x.PlaceSalonId);
        builder.HasIndex(x => new { x.PracticeId, x.Serial }).IsUnique().HasDatabaseName(OneSerial);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.Refers<HairSystem, HairSystem>(x => x.RepeatsId);
        builder.Contains(x => x.Promises, (PromiseRevision p) => p.HairSystemId);
        builder.Contains(x => x.Repairs, (UnitRepair r) => r.HairSystemId);
    }
}
