namespace HairClinic.Web.Data.Maps;

public sealed class VisitRecordMap() : FencedMap<VisitRecord>("visit_records")
{
    public const string OnePerVisit = "ix_visit_records_practice_id_visit_id";

    protected override void Map(EntityTypeBuilder<VisitRecord> builder)
    {
        builder.ComplexProperty(x => x.Grades, g => ColumnsOf<InspectionGrades>(g, "grade_"));
        builder.AddReference<VisitRecord, HairSystem>(x => x.RemovedUnitId);
        builder.AddReference<VisitRecord, Person>(x => x.RecordedBy);
        builder.HasIndex(x => new { x.PracticeId, x.RemovedUnitId });
        builder.AddChildren(x => x.TakeDownProducts, (TakeDownProduct p) => p.VisitRecordId);
    }
}
