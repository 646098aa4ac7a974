namespace HairClinic.Web.Data.Maps;

public sealed class HairSystemMap() : FencedMap<HairSystem>("hair_systems")
{
    public const string OneSerial = "ix_hair_systems_practice_id_serial";

    protected override void Map(EntityTypeBuilder<HairSystem> builder)
    {
        builder.ComplexProperty(x => x.Dates, d => ColumnsOf<UnitDates>(d));
        builder.ComplexProperty(
            x => x.EndLook,
            l =>
            {
                l.Property(x => x!.Condition).HasColumnName("end_condition");
                l.ComplexProperty(x => x!.Grades, g => ColumnsOf<InspectionGrades>(g, "end_grade_"));
                l.Property(x => x!.GradesCopied).HasColumnName("end_grades_copied");
                l.Property(x => x!.By).HasColumnName("end_look_by");
                l.Property(x => x!.WornOutOn).HasColumnName("end_worn_out_on");
                l.Property(x => x!.WornOutSince).HasColumnName("end_worn_out_since");
            }
        );
        builder.AddReference<HairSystem, Client>(x => x.ClientId);
        builder.AddReference<HairSystem, UnitKind>(x => x.UnitKindId);
        builder.AddReference<HairSystem, Salon>(x => x.PlaceSalonId);
        builder.HasIndex(x => new { x.PracticeId, x.Serial }).IsUnique().HasDatabaseName(OneSerial);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.AddReference<HairSystem, HairSystem>(x => x.RepeatsId);
        builder.AddChildren(x => x.Promises, (PromiseRevision p) => p.HairSystemId);
        builder.AddChildren(x => x.Repairs, (UnitRepair r) => r.HairSystemId);
        builder.AddChildren(x => x.Arrivals, (UnitArrival a) => a.HairSystemId);
        builder.AddChildren(x => x.Steps, (UnitStep s) => s.HairSystemId);
        builder.AddReference<HairSystem, WorkshopOrder>(x => x.OrderId);
        builder.Ignore(x => x.CurrentArrival);
    }
}
